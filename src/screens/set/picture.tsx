import { useEffect, useRef } from 'react';
import { isLegAngle } from '../../angles/joint-angle.ts';
import { exerciseOf } from '../../exercises/catalogue.ts';
import type { LegDrawing, LiveGlide } from '../../measure/live-view.ts';
import { stickersOf } from '../../measure/sticker-angle.ts';
import type { StickersSeen } from '../../measure/stickers-seen.ts';
import { type Deg, deg } from '../../units.ts';
import { ExerciseDrawing } from '../choose/exercise-drawing.tsx';
import { StreamPicture } from '../parts/stream-picture.tsx';
import type { SetPlan } from '../services.ts';
import { useGlideSetWords } from '../words/glide-set-catalogues.ts';
import { useWords } from '../words/words-context.tsx';
import { stickersOfPlan } from './by-stickers.ts';
import { drawFrame } from './draw-frame.ts';
import { drawLeg, type LegMarks } from './draw-leg.ts';
import { drawStickers } from './draw-stickers.ts';
import { legColoursOf } from './overlay.ts';
import './picture.css';
import { useRun, useRunState } from './run-context.tsx';
import type { Moment } from './run-state.ts';
import { type TargetBand, targetBand } from './target-band.ts';

/** The line that the leg of a glide is to stay below. */
function glideLimitBand(leg: LegDrawing | null, { elevationDeg, limitDeg }: LiveGlide): TargetBand | null {
  if (!leg || elevationDeg === null || limitDeg === null) return null;
  return targetBand(
    leg,
    { angle: 'leg-elevation', posture: 'lying' },
    { nowDeg: elevationDeg, fromDeg: limitDeg, toDeg: limitDeg },
  );
}

/** Where the leg is to come, and where symptoms begin. */
function bandsOf(
  { leg, angleDeg, restDeg, onsetDeg, glide }: Moment,
  { exercise, guide: { target } }: SetPlan,
): Pick<LegMarks, 'target' | 'limit'> {
  // The leg itself has the limit; where the foot is to come is shown by what leads.
  if (glide) return { target: null, limit: glideLimitBand(leg, glide) };
  const { angle, posture, rule } = exerciseOf(exercise);
  if (!leg || angleDeg === null || !isLegAngle(angle)) return { target: null, limit: null };
  // A target says how far from rest.
  const sign = rule.direction === 'rises' ? 1 : -1;
  const band = (fromDeg: number, toDeg: number) =>
    targetBand(leg, { angle, posture }, { nowDeg: angleDeg, fromDeg: deg(fromDeg), toDeg: deg(toDeg) });
  return {
    target:
      target.kind === 'range' && restDeg !== null ? band(restDeg + sign * target.fromDeg, restDeg + sign * target.toDeg) : null,
    limit: onsetDeg === null ? null : band(onsetDeg, onsetDeg),
  };
}

/** The stickers from one end to the other; a lost one is null. */
const followed = (stickers: StickersSeen | null, exercise: SetPlan['exercise']) =>
  stickersOf(exerciseOf(exercise).angle).map((name) => stickers?.points[name] ?? null);

interface PictureProps {
  readonly plan: SetPlan;
  /** The angle is written elsewhere, and counted from another zero. */
  readonly unlabelled?: boolean;
}

/** The picture being measured, and over it the leg with its angle. Painted outside of React, frame by frame. */
export function Picture({ plan, unlabelled = false }: PictureProps) {
  const { exercise, side, pictures } = plan;
  const { set, locale } = useWords();
  const glideWords = useGlideSetWords();
  const run = useRun();
  const size = useRunState((s) => s.opened?.size ?? null);
  const stage = useRunState((s) => s.stage);
  const preview = useRunState((s) => s.opened?.preview ?? null);
  const picture = useRef<HTMLCanvasElement>(null);
  const overlay = useRef<HTMLCanvasElement>(null);

  useEffect(() => {
    const canvas = picture.current;
    if (!canvas) return;
    return run.paintWith((frame) => drawFrame(canvas, frame));
  }, [run]);

  useEffect(() => {
    const canvas = overlay.current;
    if (!canvas || !size) return;
    const colours = legColoursOf(canvas);
    const whole = new Intl.NumberFormat(locale, { maximumFractionDigits: 0 });
    // Adding zero writes a rounded -0 as 0.
    const degrees = (value: Deg) => whole.format(Math.round(value) + 0).replace('-', '−');
    const labelOf = (angleDeg: Deg, headDeg: Deg | null) =>
      headDeg === null ? `${degrees(angleDeg)}°` : glideWords.angles(degrees(angleDeg), degrees(headDeg));
    const bySticker = stickersOfPlan(plan) !== null;
    const paint = () => {
      const moment = run.moment.getState();
      const { leg, angleDeg, glide, stickers } = moment;
      const angle = angleDeg === null || unlabelled ? null : labelOf(angleDeg, glide?.headDeg ?? null);
      if (bySticker) {
        drawStickers(canvas, size, followed(stickers, exercise), { angle, cross: null }, colours);
        return;
      }
      drawLeg(canvas, size, leg, { exercise, angle, ...bandsOf(moment, plan) }, colours);
    };
    paint();
    // A new frame's time is no new leg.
    return run.moment.subscribe((now, before) => {
      const same =
        now.leg === before.leg &&
        now.stickers === before.stickers &&
        now.angleDeg === before.angleDeg &&
        now.glide === before.glide;
      if (!same) paint();
    });
  }, [run, size, exercise, plan, locale, glideWords, unlabelled]);

  return (
    <div className="picture">
      <canvas
        ref={picture}
        role="img"
        aria-label={stickersOfPlan(plan) ? set.stickers.picture : set.picture}
        width={size?.width ?? 640}
        height={size?.height ?? 480}
      />
      <canvas ref={overlay} />
      {/* While the pose model still loads, so that one can sit or lie right meanwhile. */}
      {stage === 'opening' && preview ? <StreamPicture stream={preview} /> : null}
      {stage === 'opening' && !preview ? (
        <div className="picture-before">
          <ExerciseDrawing exercise={exercise} side={side} />
        </div>
      ) : null}
      {pictures.kind === 'camera' && size && stage !== 'ended' ? (
        <p className="picture-camera-on">
          <span aria-hidden="true" />
          {set.cameraOn}
        </p>
      ) : null}
    </div>
  );
}
