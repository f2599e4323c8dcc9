import type { StoredSet } from './stored-set.ts';

/**
 * When a set ended, as far as it is known, ms since 1970: when counting began, and the time from the first repetition's start to the last one's end. Never later
 * than it was: how long the pictures ran before anybody was ready is part of the result's duration, and no part of the set.
 */
export function setEndMs({ startedAt, reps }: Pick<StoredSet, 'startedAt' | 'reps'>): number {
  const [first, last] = [reps[0], reps.at(-1)];
  return Date.parse(startedAt) + (first && last ? last.endMs - first.startMs : 0);
}
