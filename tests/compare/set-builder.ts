import type { ComparableSet } from '../../src/compare/set-against-set.ts';
import type { AngleCurve, MeasuredRep } from '../../src/measure/set-result.ts';
import { deg, ms } from '../../src/units.ts';

const FRAME_MS = 50;

export interface RepPlan {
  readonly rangeDeg: number;
  readonly peakMs: number;
  readonly holdMs?: number;
  readonly complete?: boolean;
}

export const rep = ({ rangeDeg, peakMs, holdMs = 200, complete = true }: RepPlan, i = 0): MeasuredRep => ({
  number: i + 1,
  startMs: ms(peakMs - 300),
  peakMs: ms(peakMs),
  endMs: ms(peakMs + 300),
  startDeg: deg(0),
  peakDeg: deg(rangeDeg),
  rangeDeg: deg(rangeDeg),
  holdMs: ms(holdMs),
  complete,
  flags: complete ? [] : ['partial'],
  uncertaintyDeg: deg(1),
  source: 'flow',
  footDeg: null,
  footUncertaintyDeg: null,
  upMs: null,
  sankAfterMs: null,
});

/** A curve of 20 frames a second up to `untilMs`; the angle is lost between the times of `lost`. */
export function curveUntil(untilMs: number, lost: readonly [number, number] = [-1, -1]): AngleCurve {
  const tMs = Array.from({ length: Math.floor(untilMs / FRAME_MS) + 1 }, (_, i) => ms(i * FRAME_MS));
  return { tMs, angleDeg: tMs.map((t) => (t > lost[0] && t < lost[1] ? null : deg(0))) };
}

/** A set with these ranges, one movement a second. */
export function setOf(
  ranges: readonly number[],
  as: Partial<ComparableSet> = {},
): ComparableSet & { readonly curve: AngleCurve } {
  const reps = ranges.map((rangeDeg, i) => rep({ rangeDeg, peakMs: 1000 * (i + 1) }, i));
  return { exercise: 'foot-tap', side: 'left', reps, curve: curveUntil(1000 * (ranges.length + 1)), ...as };
}
