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

/** Older before newer. */
export const byMoment = (a: Pick<Entry, 'at'>, b: Pick<Entry, 'at'>): number => (a.at < b.at ? -1 : Number(a.at > b.at));
