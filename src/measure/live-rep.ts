import type { Exercise } from '../exercises/exercise.ts';
import type { Movement } from '../reps/movement.ts';
import { deg } from '../units.ts';
import type { MeasuredRep } from './set-result.ts';
import { rangeUncertainty } from './uncertainty.ts';

/** A movement as counted live: what is kept on disk until the finished set takes its place. Its error is that of both sources joined. */
export function liveRep(m: Movement, number: number, exercise: Exercise): MeasuredRep {
  const sign = exercise.rule.direction === 'rises' ? 1 : -1;
  return {
    number,
    startMs: m.startMs,
    peakMs: m.peakMs,
    endMs: m.endMs,
    startDeg: deg(m.startDeg * sign),
    peakDeg: deg(m.peakDeg * sign),
    rangeDeg: m.rangeDeg,
    holdMs: m.holdMs,
    complete: m.complete,
    flags: m.complete ? [] : ['partial'],
    uncertaintyDeg: rangeUncertainty(exercise.angle, 'fused', m.rangeDeg, 0),
    source: 'fused',
  };
}
