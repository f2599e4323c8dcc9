import { Link } from 'wouter';
import type { PrescribedExerciseId } from '../../dose/prescribed-exercise.ts';
import { startingDose } from '../../dose/starting-doses.ts';
import type { DiaryEntry } from '../../record/diary-entry.ts';
import { answeredAll, RED_FLAG_IDS } from '../../symptoms/red-flags.ts';
import { Notice } from '../parts/notice.tsx';
import { Page } from '../parts/page.tsx';
import type { Problem } from '../services.ts';
import { useGlideSetWords } from '../words/glide-set-catalogues.ts';
import { useWords } from '../words/words-context.tsx';
import { DayProblem } from './day-problem.tsx';
import { entryNow } from './entry-now.ts';
import './questions-screen.css';

interface FirstQuestionsProps {
  /** What is to be done: its cautions stand above the questions, whose one answer stands below them. */
  readonly exercise: PrescribedExerciseId;
  readonly back: string;
  readonly problem: Problem | null;
  readonly add: (entries: readonly DiaryEntry[]) => Promise<boolean>;
  /** All of them were denied, and that is on the disk. */
  readonly onNone: () => void;
}

/** The red-flag questions before a set that nobody prescribed: all six at a glance and one answer; a yes is told one by one. */
export function FirstQuestions({ exercise, back, problem, add, onNone }: FirstQuestionsProps) {
  const { questions, go } = useWords().day;
  const { few } = useGlideSetWords();
  const none = async () => {
    if (await add([{ ...entryNow(), kind: 'red-flags', answers: answeredAll('no') }])) onNone();
  };
  return (
    <Page className="questions" title={questions.title} back={back}>
      <div className="questions-parts">
        <DayProblem problem={problem} />
        <Notice icon="warning" look="caution">
          <ul className="questions-list">
            {startingDose(exercise, '', []).cautions.map((id) => (
              <li key={id}>{go.caution[id]}</li>
            ))}
            {exercise === 'nerve-glide' ? <li>{few}</li> : null}
          </ul>
        </Notice>
        <h2 className="questions-asked">{questions.lead}</h2>
        <ul className="questions-list">
          {RED_FLAG_IDS.map((flag) => (
            <li key={flag}>{questions.flags[flag]}</li>
          ))}
        </ul>
        <div className="questions-all">
          <button type="button" className="button" data-look="main" onClick={() => void none()}>
            {questions.noneOfThese}
          </button>
          <Link href="/questions/free" className="button">
            {questions.someOfThese}
          </Link>
        </div>
      </div>
    </Page>
  );
}
