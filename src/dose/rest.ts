import type { DoneSet } from './done-set.ts';

/**
 * How long ago a set ended, ms, as whoever asks has counted it on a clock that nobody sets; 0 when it was not counted. Beside it the wall clock tells, too: it also goes on
 * while the machine sleeps.
 */
export type Rested = (set: DoneSet) => number;

export const NOT_COUNTED: Rested = () => 0;

/**
 * The moment from which the next set may begin, never later than a whole gap from now: of a set that ended after `nowMs` it is only known that the clock was set back.
 * @param sets of one line and leg
 * @param gapMs least time between the end of a set and the start of the next
 * @returns whole ms since 1970 on the clock of `nowMs`; -Infinity without a set
 */
export function freeFromMs(sets: readonly DoneSet[], gapMs: number, nowMs: number, rested: Rested): number {
  const ages = sets.map((set) => Math.max(0, nowMs - Date.parse(set.endedAt), rested(set)));
  // Rounded down, so that what was counted down to 0 is over at the next look, too.
  return Math.floor(nowMs - Math.min(...ages, Number.POSITIVE_INFINITY) + gapMs);
}
