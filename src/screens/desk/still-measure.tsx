import { type ReactNode, useState } from 'react';
import type { PictureSize } from '../../capture/frame.ts';
import { exerciseOf, legAngleOf } from '../../exercises/catalogue.ts';
import { angleOfPoints, kneeOfPoints, POINTS_OF } from '../../measure/angle-of-points.ts';
import { facingOf } from '../../measure/leg-sample.ts';
import type { LegDrawing } from '../../measure/live-view.ts';
import { legToPlace, type StillLeg } from '../../measure/still-leg.ts';
import type { AngleMarkFor } from '../../symptoms/angle-mark.ts';
import { degreesIn } from '../result/degrees.ts';
import { useStillWords } from '../words/still-catalogues.ts';
import { useWords } from '../words/words-context.tsx';
import type { DeskTask } from './desk-choice.ts';
import { MarkButtons } from './mark-buttons.tsx';
import type { Reading } from './marks.ts';
import { ReadingShown } from './reading-shown.tsx';
import type { StillImage } from './still-image.ts';
import { StillPicture } from './still-picture.tsx';
import { closeTo, type ViewBox, wholeOf } from './view-box.ts';

interface StillMeasureProps {
  readonly task: DeskTask;
  readonly image: StillImage;
  readonly size: PictureSize;
  /** The leg as the model sees it here. */
  readonly seen: Omit<StillLeg, 'advice'>;
  /** The angle at this moment of a followed movement; null: it is not followed, or was not measured now. */
  readonly followed: Reading | null;
  /** The points as they were set by hand; null: they were not. */
  readonly corrected: LegDrawing | null;
  readonly onCorrect: (leg: LegDrawing | null) => void;
  readonly onMark: (kind: AngleMarkFor, reading: Reading) => void;
  /** Under the picture. */
  readonly below?: ReactNode;
  /** At the end of the numbers. */
  readonly children: ReactNode;
}

/** A picture that stands still with its angle, which is read, corrected by hand and marked. */
export function StillMeasure(props: StillMeasureProps) {
  const { task, image, size, seen, followed, corrected, onCorrect, onMark, below, children } = props;
  const { desk, locale } = useWords();
  const still = useStillWords();
  const [box, setBox] = useState<ViewBox | null>(null);
  const [editing, setEditing] = useState(false);
  const [said, setSaid] = useState('');
  const degrees = degreesIn(locale);
  const { posture } = exerciseOf(task.exercise);
  const angle = legAngleOf(task.exercise);
  const placing = editing ? legToPlace(posture, size) : null;
  const leg = corrected ?? seen.leg ?? placing;
  const facing = seen.facing ?? (leg && facingOf(leg, posture));
  const from = corrected ? 'corrected' : 'landmarks';
  const byPoints: Reading | null =
    leg && facing && leg !== placing
      ? { ...angleOfPoints(leg, from, { angle, facing, size, turnDeg: seen.turnDeg }), zero: 'own', method: from }
      : null;
  // While points are moved the number is theirs, also before the first one has moved.
  const reading = corrected || editing ? byPoints : (followed ?? byPoints);
  const mark = (kind: AngleMarkFor) => {
    if (reading) onMark(kind, reading);
    setSaid(reading ? still.marked(desk.mark[kind], degrees(reading.angleDeg)) : still.noAngle);
  };
  const edit = (on: boolean) => {
    setEditing(on);
    setBox(on && leg ? closeTo(leg, POINTS_OF[angle], size) : null);
  };
  return (
    <div className="desk-live desk-still">
      <div className="still-side">
        <StillPicture
          image={image}
          size={size}
          box={box ?? wholeOf(size)}
          angle={angle}
          leg={leg}
          editing={editing}
          onLeg={onCorrect}
        />
        {editing ? <p className="soft small">{still.handlesHint}</p> : null}
        {below}
      </div>
      <div className="desk-marking">
        <ReadingShown
          exercise={task.exercise}
          reading={reading}
          kneeDeg={angle === 'leg-elevation' && byPoints && leg && facing ? kneeOfPoints(leg, facing) : null}
        />
        <MarkButtons disabled={false} onMark={mark} said={said} />
        <div className="desk-done">
          <button type="button" className="button" onClick={() => edit(!editing)}>
            {editing ? still.correctDone : still.correct}
          </button>
          {editing && leg ? (
            <button type="button" className="button" onClick={() => setBox(box ? null : closeTo(leg, POINTS_OF[angle], size))}>
              {box ? still.whole : still.closer}
            </button>
          ) : null}
          {corrected ? (
            <button type="button" className="button" onClick={() => onCorrect(null)}>
              {still.modelPoints}
            </button>
          ) : null}
        </div>
        {children}
      </div>
    </div>
  );
}
