import type { StoredSet } from './stored-set.ts';

/** No set lasts longer, ms. Chosen: a day; a file from elsewhere may say a time that no calendar has. */
const LONGEST_MS = 86_400_000;
/** The last moment that `Date` knows. ECMA-262, 21.4.1.1. */
const LAST_MS = 8.64e15;

/**
 * When a set ended, as far as it is known, ms since 1970: when counting began, and the time from the first repetition's start to the last one's end. Never later
 * than it was: how long the pictures ran before anybody was ready is part of the result's duration, and no part of the set.
 */
export function setEndMs({ startedAt, reps }: Pick<StoredSet, 'startedAt' | 'reps'>): number {
  const [first, last] = [reps[0], reps.at(-1)];
  const lastedMs = first && last ? last.endMs - first.startMs : 0;
  return Math.min(Date.parse(startedAt) + Math.min(Math.max(lastedMs, 0), LONGEST_MS), LAST_MS);
}
