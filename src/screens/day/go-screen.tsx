import { useState } from 'react';
import { Link } from 'wouter';
import { cautionsOf } from '../../dose/cautions.ts';
import type { Today } from '../../dose/today.ts';
import type { TodayLine } from '../../dose/today-line.ts';
import { exerciseOf } from '../../exercises/catalogue.ts';
import type { SeenBy } from '../../exercises/exercise.ts';
import type { DiaryEntry } from '../../record/diary-entry.ts';
import type { AngleMark } from '../../symptoms/angle-mark.ts';
import { CameraPlan } from '../choose/camera-plan.tsx';
import { useChoices } from '../choose/choices.ts';
import { ExerciseDrawing } from '../choose/exercise-drawing.tsx';
import { NumberStepper } from '../choose/number-stepper.tsx';
import { bySticker, withLegLimit } from '../choose/plan.ts';
import { Icon } from '../parts/icon.tsx';
import { limbsOf } from '../parts/limb-words.ts';
import { LimitNotices } from '../parts/limit-notices.tsx';
import { Page } from '../parts/page.tsx';
import type { SetPlan } from '../services.ts';
import { useBegin } from '../set/begin.ts';
import { GlideDemo } from '../set/glide-demo.tsx';
import { jointOf } from '../stickers/joint-of.ts';
import { SeenByChoice } from '../stickers/seen-by-choice.tsx';
import { StickerAdvice } from '../stickers/sticker-advice.tsx';
import { StickerPlan } from '../stickers/sticker-plan.tsx';
import { useGlideSetWords } from '../words/glide-set-catalogues.ts';
import { useSeenByWords } from '../words/seen-by-catalogues.ts';
import { useWords } from '../words/words-context.tsx';
import './go-screen.css';
import { GlideHeed } from './glide-heed.tsx';
import { LessButton } from './less-button.tsx';
import { lineOf } from './line-of.ts';
import { prescribedWords } from './prescribed-words.ts';
import { useDay } from './use-day.ts';

/** How far to move, in words. */
function useTargetWords({ item: { target } }: TodayLine): string {
  const { day, locale } = useWords();
  const degrees = (deg: number) => new Intl.NumberFormat(locale, { maximumFractionDigits: 0 }).format(deg);
  return target.kind === 'range'
    ? day.go.target.range(degrees(target.fromDeg), degrees(target.toDeg))
    : day.go.target[target.kind];
}

interface GoProps {
  readonly today: Today;
  readonly line: TodayLine;
  /** Angles marked of this person. */
  readonly marks: readonly AngleMark[];
  readonly add: (entries: readonly DiaryEntry[]) => Promise<boolean>;
}

function Go({ today, line, marks, add }: GoProps) {
  const words = useWords();
  const { day, choose } = words;
  const begin = useBegin();
  const { deviceId, model, head, kneeLimitDeg, by: usualBy } = useChoices((s) => s.choices);
  const change = useChoices((s) => s.choose);
  const { asked } = useSeenByWords();
  const target = useTargetWords(line);
  const { item, side, dose } = line;
  const { exercise } = item;
  const [fewer, setFewer] = useState<number | null>(null);
  // What was chosen for this set holds only below the dose, which may have become less meanwhile.
  const reps = Math.min(fewer ?? dose.repsASet, dose.repsASet);
  const { few } = useGlideSetWords();
  const glide = exercise === 'nerve-glide';
  // Who has no stickers at hand does the set all the same.
  const [wantedBy, setWantedBy] = useState<SeenBy | null>(null);
  const by = wantedBy ?? item.seenBy ?? usualBy;
  const chooseBy = (value: SeenBy) => {
    setWantedBy(value);
    if (item.seenBy === undefined) change({ by: value });
  };
  const stickers = bySticker({ exercise, by });
  const start = () => {
    const plan: SetPlan = {
      pictures: { kind: 'camera', deviceId },
      exercise,
      side,
      targetReps: reps,
      model,
      head,
      kneeLimitDeg,
      guide: { target: item.target, tempoS: item.tempoS, holdS: dose.holdS },
      ...(stickers ? { stickers: { kind: 'find', colour: null } as const } : {}),
      line: { prescriptionId: today.prescription.id, itemId: item.id },
    };
    begin(withLegLimit(plan, marks));
  };
  const { plural, about } = prescribedWords(exercise, words);
  return (
    <Page
      className="go"
      title={`${plural}, ${limbsOf(exercise, words)[side].legLower}`}
      lead={day.dose(dose.repsASet, dose.holdS)}
      back="/today"
    >
      <div className="go-parts">
        <div className="go-what">
          {glide ? (
            <GlideDemo side={side} tempoS={item.tempoS} holdS={dose.holdS} />
          ) : (
            <ExerciseDrawing exercise={exercise} side={side} />
          )}
          <p>{about}</p>
          {glide ? <GlideHeed side={side} marks={marks} /> : <p>{target}</p>}
          {item.tempoS === null ? null : <p>{day.go.tempo(item.tempoS)}</p>}
          <h2>{day.go.cautions}</h2>
          <ul className="go-cautions">
            {cautionsOf(item).map((id) => (
              <li key={id}>{day.go.caution[id]}</li>
            ))}
            {glide ? <li>{few}</li> : null}
          </ul>
          <SeenByChoice
            exercise={exercise}
            name="go-by"
            {...(item.seenBy ? { hint: asked[item.seenBy] } : {})}
            chosen={by}
            onChoose={chooseBy}
          />
          <NumberStepper
            label={day.go.reps}
            fewer={choose.fewer}
            more={choose.moreReps}
            value={reps}
            least={1}
            most={dose.repsASet}
            onChange={setFewer}
          />
        </div>
        <div className="go-how">
          <figure className="go-camera">
            {stickers ? (
              <>
                <StickerPlan joint={jointOf(exercise)} side={side} />
                <figcaption>
                  <StickerAdvice joint={jointOf(exercise)} short />
                </figcaption>
              </>
            ) : (
              <>
                <CameraPlan posture={exerciseOf(exercise).posture} side={side} />
                <figcaption>{choose.camera[exerciseOf(exercise).posture]}</figcaption>
              </>
            )}
          </figure>
          <LimitNotices />
          <button type="button" className="button" data-look="main" onClick={start}>
            <Icon name="camera" size={28} />
            {day.go.camera}
          </button>
          <Link href={`/by-hand/${item.id}/${side}`} className="button">
            {day.go.byHand}
          </Link>
          <LessButton prescription={today.prescription} line={line} add={add} />
        </div>
      </div>
    </Page>
  );
}

/** One set, just before it: what, how far, what to heed, where the camera stands. Nothing starts from here on a day that is stopped. */
export function GoScreen({ itemId, side }: { readonly itemId: string; readonly side: string }) {
  const { day, app } = useWords();
  const { log, today, problem, add } = useDay();
  if (!log && !problem) return <p className="heard">{app.loading}</p>;
  const line = today && today.gate.kind === 'may' && today.questions.length === 0 ? lineOf(today, itemId, side) : null;
  if (today && line) return <Go today={today} line={line} marks={log?.angleMarks ?? []} add={add} />;
  return (
    <Page className="go" title={day.go.notDue} back="/today">
      <Link href="/today" className="button" data-look="main">
        {day.go.back}
      </Link>
    </Page>
  );
}
