import { type Deg, deg, type Ms, ms } from '../units.ts';
import { completeThreshold, usualRange } from './complete-threshold.ts';
import { holdTime, NEAR_TOP } from './hold-time.ts';
import type { Movement } from './movement.ts';
import type { RepRule } from './rep-rule.ts';

/**
 * Where the counter stands:
 *
 *   low --(risen by the least that is noticed)--> high --(fallen back far enough)--> low, and a movement is reported
 *    ^ follows the angle down                      follows the angle up
 */
export interface CounterState {
  readonly phase: 'low' | 'high';
  readonly lowDeg: number;
  readonly lowMs: number;
  readonly highDeg: number;
  readonly highMs: number;
  /** The stay near the peak: where and when it began, and when it was last near. */
  readonly holdDeg: number;
  readonly holdFromMs: number;
  readonly holdToMs: number;
  readonly lastMs: number;
  /** The newest angle, at `lastMs`. */
  readonly nowDeg: number;
  /** Ranges of the latest movements, for the person's own thresholds. */
  readonly ranges: readonly number[];
  /** The person's usual range so far; null before the first movement. */
  readonly usualDeg: number | null;
}

/** A tremor at the top smaller than this share of the usual range does not end a movement. Chosen. */
const REVERSAL_SHARE = 0.3;
/** A movement is over when it has fallen back by this share of its rise: soon enough to be heard as "now", late enough to be sure. Chosen. */
const BACK_SHARE = 0.6;
/** However small, it is over when it has fallen back by this share of its rise. Chosen: a movement is said to end where a tenth of it is left. */
const OVER_SHARE = 0.9;
/** No angle for longer than this: what comes after joins nothing before. Chosen: two or three frames of a slow machine. */
export const LIVE_GAP_MS = 700;
/** The person's own thresholds come from this many latest movements, so that a long session costs no more than a short one. Chosen. */
const REMEMBERED = 60;

export const startCounter = (tMs: Ms, angle: Deg): CounterState => ({
  phase: 'low',
  lowDeg: angle,
  lowMs: tMs,
  ...peakAt(tMs, angle),
  lastMs: tMs,
  nowDeg: angle,
  ranges: [],
  usualDeg: null,
});

const peakAt = (tMs: Ms, angle: Deg) => ({ highDeg: angle, highMs: tMs, holdDeg: angle, holdFromMs: tMs, holdToMs: tMs });

/**
 * One step of live counting, on an angle that is positive in the direction of the exercise. Causal: complete or partial is judged by the
 * movements so far and may be judged otherwise when the set is over. A gap of more than LIVE_GAP_MS is never part of a movement.
 * @returns the new state and, when one has just come back, the movement
 */
export function stepCounter(
  before: CounterState,
  tMs: Ms,
  angle: Deg,
  rule: RepRule,
): readonly [CounterState] | readonly [CounterState, Movement] {
  if (tMs - before.lastMs > LIVE_GAP_MS) return [resumeCounter(before, tMs, angle)];
  const state = { ...before, lastMs: tMs, nowDeg: angle };
  if (state.phase === 'low') {
    if (angle < state.lowDeg) return [{ ...state, lowDeg: angle, lowMs: tMs }];
    if (angle >= state.lowDeg + rule.noticeDeg) return [{ ...state, phase: 'high', ...peakAt(tMs, angle) }];
    // At rest the start of a movement moves on with the time.
    const still = angle < state.lowDeg + rule.noticeDeg / 2;
    return [still ? { ...state, lowMs: tMs } : state];
  }
  const rise = Math.max(state.highDeg, angle) - state.lowDeg;
  if (angle >= state.highDeg) {
    const held = state.holdDeg >= angle - NEAR_TOP * rise;
    const hold = held ? { holdToMs: tMs } : { holdDeg: angle, holdFromMs: tMs, holdToMs: tMs };
    return [{ ...state, highDeg: angle, highMs: tMs, ...hold }];
  }
  const reversal = Math.max(rule.noticeDeg, REVERSAL_SHARE * (state.usualDeg ?? rule.leastDeg));
  const fall = state.highDeg - angle;
  if (fall < Math.max(Math.min(reversal, OVER_SHARE * rise), BACK_SHARE * rise)) {
    return [fall <= NEAR_TOP * rise ? { ...state, holdToMs: tMs } : state];
  }
  const next: CounterState = { ...state, phase: 'low', lowDeg: angle, lowMs: tMs, ...peakAt(tMs, angle) };
  if (tMs - state.lowMs < rule.leastMs) return [next];
  const ranges = [...state.ranges.slice(1 - REMEMBERED), rise];
  const movement: Movement = {
    startMs: ms(state.lowMs),
    peakMs: ms(state.highMs),
    endMs: tMs,
    startDeg: deg(state.lowDeg),
    peakDeg: deg(state.highDeg),
    rangeDeg: deg(rise),
    // The way up is not known as exactly as the way down: taken to last as long.
    holdMs: holdTime(state.holdToMs - state.holdFromMs, 2 * (tMs - state.holdToMs), BACK_SHARE),
    complete: rise >= completeThreshold(ranges, rule),
  };
  return [{ ...next, ranges, usualDeg: usualRange(ranges) }, movement];
}

/** After a gap nothing before it may join what comes after. */
export const resumeCounter = (state: CounterState, tMs: Ms, angle: Deg): CounterState => ({
  ...startCounter(tMs, angle),
  ranges: state.ranges,
  usualDeg: state.usualDeg,
});

/** The counter after a rest that it was not yet there for: a lift that is under way by its end begins from that rest, and what was over by then is forgotten. */
export function counterAfter(rest: readonly { readonly tMs: Ms; readonly deg: Deg }[], rule: RepRule): CounterState {
  const [first, ...others] = rest;
  if (!first) throw new Error('counterAfter requires a rest of at least one angle, got none');
  const state = others.reduce((each, { tMs, deg }) => stepCounter(each, tMs, deg, rule)[0], startCounter(first.tMs, first.deg));
  return { ...state, ranges: [], usualDeg: null };
}

/** The same with angles that are told from another zero. */
export const countedFrom = (state: CounterState, zeroDeg: Deg): CounterState => ({
  ...state,
  lowDeg: state.lowDeg - zeroDeg,
  highDeg: state.highDeg - zeroDeg,
  holdDeg: state.holdDeg - zeroDeg,
  nowDeg: state.nowDeg - zeroDeg,
});
