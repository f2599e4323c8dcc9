import { headLift } from '../angles/head-lift.ts';
import type { Facing, SegmentLine } from '../angles/joint-angle.ts';
import { median, quantile } from '../signal/median.ts';
import { type Deg, deg } from '../units.ts';
import { believedDirections } from './believed-lines.ts';
import type { LegSample } from './leg-sample.ts';
import { lineBetween } from './line-between.ts';

/** Ear and nose must be seen with at least this visibility: the model places hidden ones by guess. Chosen. */
const SEEN = 0.5;
/**
 * The model's points follow a lifted head by this share of its way only, as they do a foot's: the line from ear to nose turned by 0.5 to 0.6 of the neck's
 * true bend on rendered clips (docs/accuracy.md). Its turn is divided by it.
 */
export const HEAD_SHARE = 0.55;
/** This share of the lifts seen lies at or below where the head rests: nobody holds it up for longer than that. Chosen. */
const RESTING_SHARE = 0.1;

/** The line from ear to nose; null where it was not seen. */
export function faceLine({ head }: Pick<LegSample, 'head'>): SegmentLine | null {
  if (!head || head.visibility < SEEN) return null;
  const line = lineBetween(head.ear, head.nose);
  return line.lengthPx > 0 ? line : null;
}

/** How far the head is lifted in one frame, from no zero of its own; null without its lines. */
export function liftOf(face: SegmentLine | null, { points }: Pick<LegSample, 'points'>, facing: Facing): Deg | null {
  if (!face || !points) return null;
  return deg(headLift({ face, trunk: lineBetween(points.shoulder, points.hip) }, facing) / HEAD_SHARE);
}

/** Where the head rests among lifts; null without any. */
export function headRest(lifts: readonly (Deg | null)[]): Deg | null {
  const rest = quantile(
    lifts.filter((lift) => lift !== null),
    RESTING_SHARE,
  );
  return rest === null ? null : deg(rest);
}

/** The head's lift in each frame of a finished set, from where it rests in it; null where it was not seen, or not where its points are. */
export function headSeries(samples: readonly LegSample[], facing: Facing): readonly (Deg | null)[] {
  const faces = samples.map(faceLine);
  const usualPx = median(faces.flatMap((face) => (face ? [face.lengthPx] : []))) ?? 0;
  const tMs = samples.map((s) => s.tMs);
  const believed = believedDirections(tMs, faces, usualPx);
  const lifts = samples.map((sample, i) => liftOf(believed[i] === null ? null : (faces[i] ?? null), sample, facing));
  const rest = headRest(lifts);
  return lifts.map((lift) => (lift === null || rest === null ? null : deg(lift - rest)));
}
