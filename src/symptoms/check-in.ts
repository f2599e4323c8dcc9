import type { CalendarDay } from './calendar-day.ts';
import type { Entry, NotAnswered } from './entry.ts';
import type { Felt } from './felt.ts';

/** The next day: "how was it after yesterday?" Some movements flare a nerve hours later. What is felt (`Felt`) is now. */
export interface CheckIn extends Entry, Felt {
  readonly kind: 'check-in';
  /** The day it looks back on. */
  readonly aboutDay: CalendarDay;
  /** The most it was since the sets of that day: whole, 0 to 10. */
  readonly worst: number | NotAnswered;
  /** Whether the sets stirred something up, and whether that was over by this morning. */
  readonly afterwards: 'no-flare' | 'settled' | 'not-settled' | NotAnswered;
  readonly weakness: 'as-before' | 'worse' | NotAnswered;
}
