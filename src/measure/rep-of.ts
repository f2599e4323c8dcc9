import type { Exercise } from '../exercises/exercise.ts';
import type { Movement } from '../reps/movement.ts';
import { deg } from '../units.ts';
import type { MeasuredRep } from './set-result.ts';
import { rangeUncertainty } from './uncertainty.ts';

/** What a repetition says besides its movement. */
export interface RepFacts extends Pick<MeasuredRep, 'number' | 'flags' | 'source'> {
  /** Standard deviation of the noise that the uncertainty takes in. */
  readonly noiseDeg: number;
}

/** A movement, whose angles rise in the direction of the exercise, as a repetition in the joint's own angle. */
export function repOf(m: Movement, exercise: Exercise, { number, flags, source, noiseDeg }: RepFacts): MeasuredRep {
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
    flags,
    uncertaintyDeg: rangeUncertainty(exercise.angle, source, m.rangeDeg, noiseDeg),
    source,
    footDeg: null,
    footUncertaintyDeg: null,
  };
}

/** A movement as counted live: what is kept on disk until the finished set takes its place. Its error is that of both sources joined. */
export const liveRep = (m: Movement, number: number, exercise: Exercise): MeasuredRep =>
  repOf(m, exercise, { number, flags: m.complete ? [] : ['partial'], source: 'fused', noiseDeg: 0 });
