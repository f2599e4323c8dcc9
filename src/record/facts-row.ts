import * as v from 'valibot';
import type { PersonFacts } from '../dose/person-facts.ts';
import { PRESCRIBED_EXERCISE_IDS } from '../dose/prescribed-exercise.ts';
import { RED_FLAG_IDS } from '../symptoms/red-flags.ts';
import type { PersonId } from './person.ts';
import { sideShape } from './prescription-shape.ts';
import { dayShape, oneOf, shaped, wholeShape } from './shape.ts';

/** Raised whenever the rules behind the facts change, so that what older rules worked out is not believed. */
export const FACTS_RULES = 1;

/** What was worked out for one person. */
export interface FactsRow {
  readonly person: PersonId;
  readonly rules: number;
  readonly facts: PersonFacts;
}

const linesShape = v.array(v.strictObject({ exercise: v.picklist(PRESCRIBED_EXERCISE_IDS), sides: v.array(sideShape) }));
const factsShape = v.strictObject({
  lastActivity: v.nullable(dayShape),
  plan: v.nullable(v.strictObject({ since: dayShape, lines: linesShape })),
  stop: v.nullable(
    v.strictObject({
      flags: v.array(v.picklist(RED_FLAG_IDS)),
      weakness: v.array(oneOf({ 'new-weakness': true, 'told-worse': true, 'self-check-worse': true })),
      urgency: v.nullable(oneOf({ now: true, 'same-day': true })),
    }),
  ),
  flare: v.nullable(
    v.strictObject({
      day: dayShape,
      reason: oneOf({
        'red-flag': true,
        weakness: true,
        'further-down': true,
        'clear-rise': true,
        'over-limit': true,
        'not-settled': true,
      }),
    }),
  ),
  steps: v.array(
    v.strictObject({
      exercise: v.picklist(PRESCRIBED_EXERCISE_IDS),
      sides: v.array(sideShape),
      aboutDay: dayShape,
      freshDays: wholeShape,
    }),
  ),
}) satisfies v.GenericSchema<unknown, PersonFacts>;

/** The facts of a stored row; null when older rules worked them out or they can't be read: then they are to be worked out again. */
export function factsIn(row: unknown): PersonFacts | null {
  if (typeof row !== 'object' || row === null || !('rules' in row) || row.rules !== FACTS_RULES || !('facts' in row)) return null;
  const found = shaped<PersonFacts>(factsShape, row.facts);
  return found.ok ? found.value : null;
}
