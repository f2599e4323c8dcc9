import * as v from 'valibot';
import type { Side } from '../pose/landmarks.ts';
import type { CalendarDay } from '../symptoms/calendar-day.ts';
import { dayShape, idShape, momentShape, oneOf } from './shape.ts';

/** Whose sets and diary: a UUID, or `SELF`. */
export type PersonId = string;
/** Whoever does their own sets on this machine. Not in the list of people. */
export const SELF: PersonId = 'me';

/** Longest name and notes, characters. Chosen: a list stays a list, and a note a note. */
export const LONGEST_NAME = 80;
export const LONGEST_NOTES = 2000;

/** Somebody whom a therapist looks after on this machine. */
export interface Person {
  /** UUID, see `new-id.ts`. */
  readonly id: PersonId;
  readonly schema: 1;
  /** A name or a code; whatever tells this person from the others. */
  readonly name: string;
  /** Null: nobody said. */
  readonly affectedSide: Side | 'both' | null;
  readonly notes: string;
  /** ISO 8601, UTC, with milliseconds. */
  readonly addedAt: string;
  readonly changedAt: string;
  /** Up to this day the therapist has seen what needed attention; null: nothing yet. */
  readonly seenUntil: CalendarDay | null;
}

export const personIdShape = v.union([v.literal(SELF), idShape]);

/** What is read back, or comes from a form, is a `Person` only after this. */
export const personShape = v.strictObject({
  id: idShape,
  schema: v.literal(1),
  name: v.pipe(v.string(), v.trim(), v.minLength(1), v.maxLength(LONGEST_NAME)),
  affectedSide: v.nullable(oneOf({ left: true, right: true, both: true })),
  notes: v.pipe(v.string(), v.maxLength(LONGEST_NOTES)),
  addedAt: momentShape,
  changedAt: momentShape,
  seenUntil: v.nullable(dayShape),
}) satisfies v.GenericSchema<unknown, Person>;
