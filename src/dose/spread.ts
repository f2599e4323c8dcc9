import type { PrescribedExercise } from './prescribed-exercise.ts';

/** The hours in which sets are spread, minutes since midnight on the wall clock. */
export interface WakingDay {
  readonly fromMinute: number;
  readonly toMinute: number;
}

/** 8 to 21 o'clock. Chosen. */
export const WAKING_DAY: WakingDay = { fromMinute: 8 * 60, toMinute: 21 * 60 };

/** Of the even distance between sets, what must have passed before the next. Chosen: who starts at noon can still do them all. */
const LEAST_SHARE = 0.5;
const MINUTE_MS = 60_000;

const partMinutes = ({ fromMinute, toMinute }: WakingDay, sets: number): number => (toMinute - fromMinute) / Math.max(1, sets);

/** The least time between the end of a set and the start of the next of the same line and leg, ms. Time that passes, not wall-clock time. */
export function leastGapMs(item: Pick<PrescribedExercise, 'spread' | 'restS'>, setsADay: number, waking: WakingDay): number {
  const restMs = item.restS * 1000;
  return item.spread === 'together' ? restMs : Math.max(restMs, LEAST_SHARE * partMinutes(waking, setsADay) * MINUTE_MS);
}

/** Times to be reminded at, wall-clock minutes, rounded to 5: the middle of each of as many equal parts of the waking day. */
export function reminderMinutes(setsADay: number, waking: WakingDay): readonly number[] {
  const part = partMinutes(waking, setsADay);
  return Array.from({ length: setsADay }, (_, i) => Math.round((waking.fromMinute + (i + 0.5) * part) / 5) * 5);
}
