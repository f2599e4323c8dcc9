import * as v from 'valibot';
import type { GivenPlan } from '../dose/given-plan.ts';
import { fail, ok, type Result } from '../result.ts';
import { levelsOf } from './json-levels.ts';
import { PLAN_LIMITS, type PlanError } from './plan-error.ts';
import { planEntries } from './prescription-shape.ts';
import { idShape, momentShape, originShape, shaped } from './shape.ts';

/** The newest version that is read. */
const PLAN_VERSION = 2;
/** Chosen: far above what anybody is given at once, or is called. */
const MOST_LINES = 60;
/** Characters. */
export const LONGEST_NAME = 200;

const documentShape = v.strictObject({
  evenside: v.literal('plan'),
  version: v.picklist([1, PLAN_VERSION]),
  plan: v.strictObject({
    id: idShape,
    writtenAt: momentShape,
    origin: originShape,
    ...planEntries,
    by: v.strictObject({ ...planEntries.by.entries, name: v.pipe(v.string(), v.maxLength(LONGEST_NAME)) }),
    items: v.pipe(planEntries.items, v.minLength(1), v.maxLength(MOST_LINES)),
  }),
});

/** Version 2 is version 1 with `seenBy` of a line, and is written only for a plan that has it: an older Evenside reads all others. */
const versionOf = ({ items }: GivenPlan): 1 | typeof PLAN_VERSION =>
  items.some(({ seenBy }) => seenBy !== undefined) ? PLAN_VERSION : 1;

/** The document of a plan, as JSON is made from it. */
export const documentOf = (plan: GivenPlan) => ({ evenside: 'plan', version: versionOf(plan), plan }) as const;

const has = <K extends string>(value: unknown, key: K): value is Readonly<Record<K, unknown>> =>
  typeof value === 'object' && value !== null && Object.hasOwn(value, key);

/** A value that should be a plan's document. The whole of it is checked before anything of it is given back. */
export function planOf(value: unknown): Result<GivenPlan, PlanError> {
  if (!has(value, 'evenside') || value.evenside !== 'plan') return fail({ kind: 'not-a-plan' });
  const { version } = value as { readonly version?: unknown };
  if (typeof version === 'number' && version > PLAN_VERSION) return fail({ kind: 'plan-newer', version, known: PLAN_VERSION });
  const found = shaped(documentShape, value);
  return found.ok ? ok(found.value.plan) : fail({ kind: 'plan-wrong', where: found.error.where, what: found.error.what });
}

/** The text of a plan's document, as a file has it. */
export function planOfJson(text: string): Result<GivenPlan, PlanError> {
  const { fileCharacters, levels: limit } = PLAN_LIMITS;
  if (text.length > fileCharacters)
    return fail({ kind: 'plan-too-large', what: 'fileCharacters', found: text.length, limit: fileCharacters });
  const found = levelsOf(text, limit);
  if (found > limit) return fail({ kind: 'plan-too-large', what: 'levels', found, limit });
  let value: unknown;
  try {
    value = JSON.parse(text);
  } catch {
    // What still says that it is a plan was one.
    return text.includes('"evenside"') ? fail({ kind: 'plan-damaged', how: 'not-json' }) : fail({ kind: 'not-a-plan' });
  }
  return planOf(value);
}
