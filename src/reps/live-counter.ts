import { type Deg, deg, type Ms } from '../units.ts';
import { completeThreshold } from './complete-threshold.ts';
import type { Movement } from './movement.ts';
import type { RepRule } from './rep-rule.ts';

/**
 * Where the counter stands:
 *
 *   low --(risen by the reversal)--> high --(fallen back far enough)--> low, and a movement is reported
 *    ^ follows the angle down              follows the angle up
 */
export interface CounterState {
  readonly phase: 'low' | 'high';
  readonly lowDeg: number;
  readonly lowMs: number;
  readonly highDeg: number;
  readonly highMs: number;
  readonly lastMs: number;
  /** Ranges of the movements so far, for the person's own thresholds. */
  readonly ranges: readonly number[];
}

/** A tremor at the top smaller than this share of the usual range does not end a movement. Chosen. */
const REVERSAL_SHARE = 0.3;
/** A movement is over when it has fallen back by this share of its rise: soon enough to be heard as "now", late enough to be sure. Chosen. */
const BACK_SHARE = 0.6;

export const startCounter = (tMs: Ms, angle: Deg): CounterState => ({
  phase: 'low',
  lowDeg: angle,
  lowMs: tMs,
  highDeg: angle,
  highMs: tMs,
  lastMs: tMs,
  ranges: [],
});

/**
 * One step of live counting, on an angle that is positive in the direction of the exercise. Causal: complete or partial is judged by the
 * movements so far and may be judged otherwise when the set is over.
 * @returns the new state and, when one has just come back, the movement
 */
export function stepCounter(state: CounterState, tMs: Ms, angle: Deg, rule: RepRule): readonly [CounterState, Movement?] {
  const usual = state.ranges.length > 0 ? completeThreshold(state.ranges, rule) / rule.completeShare : rule.leastDeg;
  const reversal = Math.max(rule.noticeDeg, REVERSAL_SHARE * usual);
  if (state.phase === 'low') {
    if (angle < state.lowDeg) return [{ ...state, lowDeg: angle, lowMs: tMs, lastMs: tMs }];
    if (angle >= state.lowDeg + rule.noticeDeg) {
      return [{ ...state, phase: 'high', highDeg: angle, highMs: tMs, lastMs: tMs }];
    }
    // At rest the start of a movement moves on with the time.
    const still = angle < state.lowDeg + rule.noticeDeg / 2;
    return [still ? { ...state, lowMs: tMs, lastMs: tMs } : { ...state, lastMs: tMs }];
  }
  if (angle >= state.highDeg) return [{ ...state, highDeg: angle, highMs: tMs, lastMs: tMs }];
  const rise = state.highDeg - state.lowDeg;
  if (state.highDeg - angle < Math.max(Math.min(reversal, rise), BACK_SHARE * rise)) return [{ ...state, lastMs: tMs }];
  const next: CounterState = { ...state, phase: 'low', lowDeg: angle, lowMs: tMs, highDeg: angle, highMs: tMs, lastMs: tMs };
  if (tMs - state.lowMs < rule.leastMs) return [next];
  const ranges = [...state.ranges, rise];
  const movement: Movement = {
    startMs: state.lowMs as Ms,
    peakMs: state.highMs as Ms,
    endMs: tMs,
    startDeg: deg(state.lowDeg),
    peakDeg: deg(state.highDeg),
    rangeDeg: deg(rise),
    holdMs: 0 as Ms,
    complete: rise >= completeThreshold(ranges, rule),
  };
  return [{ ...next, ranges }, movement];
}

/** After a gap nothing before it may join what comes after. */
export const resumeCounter = (state: CounterState, tMs: Ms, angle: Deg): CounterState => ({
  ...startCounter(tMs, angle),
  ranges: state.ranges,
});
