import { useState } from 'react';
import { useLocation } from 'wouter';
import type { NotAnswered } from '../../symptoms/entry.ts';
import { answeredAll, RED_FLAG_IDS, type RedFlagAnswers, type RedFlagId } from '../../symptoms/red-flags.ts';
import { Page } from '../parts/page.tsx';
import { useWords } from '../words/words-context.tsx';
import { DayProblem } from './day-problem.tsx';
import { entryNow } from './entry-now.ts';
import './questions-screen.css';
import { useDay } from './use-day.ts';

type Answer = 'yes' | 'no' | NotAnswered;

const OPEN: Readonly<Record<RedFlagId, Answer>> = answeredAll('not-answered');

interface QuestionProps {
  readonly flag: RedFlagId;
  readonly answer: Answer;
  readonly onAnswer: (answer: Answer) => void;
}

function Question({ flag, answer, onAnswer }: QuestionProps) {
  const { questions } = useWords().day;
  return (
    <fieldset className="question">
      <legend>{questions.flags[flag]}</legend>
      {(['no', 'yes'] as const).map((value) => (
        <label key={value} className="question-answer">
          <input type="radio" name={flag} checked={answer === value} onChange={() => onAnswer(value)} />
          {questions[value]}
        </label>
      ))}
    </fieldset>
  );
}

/** The red-flag questions. A yes is kept at once: whoever closes the page then has told it. @param then where to go on when all is well */
export function QuestionsScreen({ then }: { readonly then: string }) {
  const { day } = useWords();
  const { problem, add } = useDay();
  const [, navigate] = useLocation();
  const [answers, setAnswers] = useState(OPEN);
  const open = RED_FLAG_IDS.filter((id) => answers[id] === 'not-answered').length;
  const keep = async (given: Readonly<Record<RedFlagId, Answer>>, to: string) => {
    const entry: RedFlagAnswers = { ...entryNow(), kind: 'red-flags', answers: given };
    if (await add([entry])) navigate(to);
  };
  const answered = (flag: RedFlagId, answer: Answer) => {
    const given = { ...answers, [flag]: answer };
    setAnswers(given);
    if (answer === 'yes') void keep(given, '/today');
  };
  return (
    <Page className="questions" title={day.questions.title} lead={day.questions.lead} back="/today">
      <DayProblem problem={problem} />
      <form
        className="questions-parts"
        onSubmit={(event) => {
          event.preventDefault();
          void keep(answers, then);
        }}
      >
        {RED_FLAG_IDS.map((flag) => (
          <Question key={flag} flag={flag} answer={answers[flag]} onAnswer={(answer) => answered(flag, answer)} />
        ))}
        {open > 0 ? <p className="soft">{day.questions.open(open)}</p> : null}
        <button type="submit" className="button" data-look="main">
          {day.questions.done}
        </button>
      </form>
    </Page>
  );
}
