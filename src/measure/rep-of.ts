import type { Exercise } from '../exercises/exercise.ts';
import type { Movement } from '../reps/movement.ts';
import { deg } from '../units.ts';
import type { MeasuredRep } from './set-result.ts';
import { type RangeEvidence, rangeUncertainty } from './uncertainty.ts';

/** What a repetition says besides its movement. */
export interface RepFacts extends Pick<MeasuredRep, 'number' | 'flags'>, Omit<RangeEvidence, 'angle' | 'rangeDeg'> {}

/** A movement, whose angles rise in the direction of the exercise, as a repetition in the joint's own angle. */
export function repOf(m: Movement, exercise: Exercise, { number, flags, ...evidence }: RepFacts): MeasuredRep {
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
    uncertaintyDeg: rangeUncertainty({ ...evidence, angle: exercise.angle, rangeDeg: m.rangeDeg }),
    source: evidence.source,
    footDeg: null,
    footUncertaintyDeg: null,
    upMs: null,
    sankAfterMs: null,
  };
}

/** Nothing is known of the error while a set runs. */
const LIVE_EVIDENCE = {
  source: 'fused',
  noiseDeg: 0,
  matchDeg: 0,
  closureDeg: null,
  segmentsPx: [],
  cameraTurnDeg: null,
} as const;

/** What is counted, and how it is seen: a set's spec is one. */
interface LiveSpec {
  readonly exercise: Exercise;
  readonly seenBy?: 'stickers';
}

/** A movement as counted live: what is kept on disk until the finished set takes its place. Its error is that of both sources joined, or of stickers. */
export const liveRep = (m: Movement, number: number, { exercise, seenBy }: LiveSpec): MeasuredRep => {
  const source = seenBy === 'stickers' ? seenBy : LIVE_EVIDENCE.source;
  return repOf(m, exercise, { number, flags: m.complete ? [] : ['partial'], ...LIVE_EVIDENCE, source });
};
