import type { CalendarDay } from './calendar-day.ts';

/** What every record of the diary carries. Records are immutable: a correction is a new one. */
export interface Entry {
  /** UUID. */
  readonly id: string;
  readonly schema: 1;
  /** `example`: invented, and removed with one call. */
  readonly origin: 'own' | 'example';
  /** When it was told: ISO 8601, UTC, with milliseconds. */
  readonly at: string;
  /** The day this moment had on the person's own calendar; kept, since a later reader may sit in another time zone. */
  readonly day: CalendarDay;
}

/** An answer that was not given is stored as such, and never counts as a good one. */
export type NotAnswered = 'not-answered';

type Placed = Pick<Entry, 'at'> & Partial<Pick<Entry, 'id'>>;

/** Older before newer; of one moment by id, so that two machines that have the same entries have them in the same order. */
export const byMoment = ({ at: a, id: ofA = '' }: Placed, { at: b, id: ofB = '' }: Placed): number => {
  if (a !== b) return a < b ? -1 : 1;
  return ofA < ofB ? -1 : Number(ofA > ofB);
};
