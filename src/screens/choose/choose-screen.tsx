import { useState } from 'react';
import { Link } from 'wouter';
import { exerciseOf } from '../../exercises/catalogue.ts';
import { EXERCISE_IDS } from '../../exercises/exercise.ts';
import { FirstQuestions } from '../day/first-questions.tsx';
import { GlideHeed } from '../day/glide-heed.tsx';
import { StopNotice } from '../day/stop-notice.tsx';
import { useDay } from '../day/use-day.ts';
import { Icon } from '../parts/icon.tsx';
import { limbsOf } from '../parts/limb-words.ts';
import { LimitNotices } from '../parts/limit-notices.tsx';
import { Page } from '../parts/page.tsx';
import type { PictureKind } from '../services.ts';
import { useBegin } from '../set/begin.ts';
import { GlideDemo } from '../set/glide-demo.tsx';
import { jointOf } from '../stickers/joint-of.ts';
import { StickerAdvice } from '../stickers/sticker-advice.tsx';
import { StickerPlan } from '../stickers/sticker-plan.tsx';
import { useStickerWords } from '../words/sticker-catalogues.ts';
import { useWords } from '../words/words-context.tsx';
import { CameraPlan } from './camera-plan.tsx';
import './choose-screen.css';
import { LEAST_REPS, MOST_REPS, useChoices } from './choices.ts';
import { ChosenFile } from './chosen-file.tsx';
import { ExerciseDrawing } from './exercise-drawing.tsx';
import { MoreChoices } from './more-choices.tsx';
import { NumberStepper } from './number-stepper.tsx';
import { OptionCards } from './option-cards.tsx';
import { bySticker, planOf, withLegLimit } from './plan.ts';

const SIDES = ['left', 'right'] as const;

/** What is to be done: exercise, leg, dose. Everything else has a default. */
export function ChooseScreen({ kind }: { readonly kind: Exclude<PictureKind, 'example'> }) {
  const words = useWords();
  const { choose, exercises, day } = words;
  const stickerWords = useStickerWords();
  const { log, gate, questions, problem, add } = useDay();
  const [asking, setAsking] = useState(false);
  const { choices, file, choose: change } = useChoices();
  const begin = useBegin();
  const { exercise, side, targetReps } = choices;
  const posture = exerciseOf(exercise).posture;
  const chosen = planOf(kind, choices, file);
  const marks = log?.angleMarks ?? [];
  const plan = chosen && withLegLimit(chosen, marks);
  const stopped = kind === 'camera' && gate?.kind === 'stopped' ? gate : null;
  if (stopped)
    return (
      <Page className="choose" title={day.title} back="/">
        <StopNotice stop={stopped} add={add} />
      </Page>
    );
  if (asking && plan)
    return <FirstQuestions exercise={exercise} back="/" problem={problem} add={add} onNone={() => begin(plan)} />;
  return (
    <Page className="choose" title={choose.title} back="/">
      <form
        className="choose-parts"
        onSubmit={(event) => {
          event.preventDefault();
          if (plan && kind === 'camera' && questions.length > 0) setAsking(true);
          else if (plan) begin(plan);
        }}
      >
        <div className="choose-what">
          {kind === 'file' ? <ChosenFile /> : null}
          <OptionCards
            legend={choose.exercise}
            name="exercise"
            options={EXERCISE_IDS.map((value) => ({
              value,
              name: exercises[value].name,
              about: exercises[value].about,
              drawing: <ExerciseDrawing exercise={value} side={side} />,
            }))}
            chosen={exercise}
            onChoose={(value) => change({ exercise: value })}
          />
          {exercise === 'nerve-glide' ? (
            <div className="choose-glide">
              <GlideDemo side={side} tempoS={null} holdS={0} />
              {kind === 'camera' ? (
                <div>
                  <GlideHeed side={side} marks={marks} />
                </div>
              ) : null}
            </div>
          ) : null}
          <OptionCards
            legend={exercise === 'toe-lift' ? stickerWords.side : choose.side}
            hint={bySticker(choices) ? stickerWords.sideHint : choose.sideHint}
            name="side"
            options={SIDES.map((value) => ({ value, name: limbsOf(exercise, words)[value].leg }))}
            chosen={side}
            onChoose={(value) => change({ side: value })}
          />
          <NumberStepper
            label={choose.reps}
            fewer={choose.fewer}
            more={choose.moreReps}
            value={targetReps}
            least={LEAST_REPS}
            most={MOST_REPS}
            onChange={(reps) => change({ targetReps: reps })}
          />
        </div>
        <div className="choose-go">
          <figure className="choose-camera">
            {bySticker(choices) ? (
              <StickerPlan joint={jointOf(exercise)} side={side} />
            ) : (
              <CameraPlan posture={posture} side={side} />
            )}
            <figcaption>
              {bySticker(choices) ? (
                <StickerAdvice joint={jointOf(exercise)} short />
              ) : kind === 'file' ? (
                choose.filmed
              ) : (
                choose.camera[posture]
              )}
            </figcaption>
          </figure>
          <LimitNotices />
          <button type="submit" className="button" data-look="main" disabled={!plan || (kind === 'camera' && !gate && !problem)}>
            <Icon name={kind === 'camera' ? 'camera' : 'play'} size={28} />
            {choose.begin[kind]}
          </button>
          {kind === 'camera' ? (
            <Link href={`/count/${exercise}/${side}`} className="button">
              {day.go.byHand}
            </Link>
          ) : null}
        </div>
        <MoreChoices kind={kind} />
      </form>
    </Page>
  );
}
