import { type GivenPlan, givenPlan, withoutName } from '../dose/given-plan.ts';
import type { Prescription } from '../dose/prescription.ts';
import { ok, type Result } from '../result.ts';
import { packed, unpacked } from './plan-code.ts';
import { documentOf, planOf, planOfJson } from './plan-document.ts';
import type { PlanError } from './plan-error.ts';

/** What comes before the code in a link, after the # so that no server is told of it. */
export const TAKE_ADDRESS = '#/take/';

/** The document as its shape orders it. Fails where the plan is none that could be read again: without a line, or far too large. */
function checked(plan: GivenPlan): Result<ReturnType<typeof documentOf>, PlanError> {
  const found = planOf(documentOf(plan));
  return found.ok ? ok(documentOf(found.value)) : found;
}

/** The text of a plan's file, docs/plan-format.md. It holds no name but that of who decided. */
export function encodePlan(prescription: Prescription): Result<string, PlanError> {
  const document = checked(givenPlan(prescription));
  return document.ok ? ok(`${JSON.stringify(document.value, null, 2)}\n`) : document;
}

/** The same in a few hundred characters of an address. @param named with the name of who decided */
export function encodePlanCode(prescription: Prescription, { named }: { readonly named: boolean }): Result<string, PlanError> {
  const plan = givenPlan(prescription);
  const document = checked(named ? plan : withoutName(plan));
  return document.ok ? packed(JSON.stringify(document.value)) : document;
}

function planOfCode(code: string): Result<GivenPlan, PlanError> {
  const text = unpacked(code);
  return text.ok ? planOfJson(text.value) : text;
}

/**
 * Reads a plan from whatever carries it: the text of its file, a link, a text that a link stands in, or the code of one. All of it is checked before anything
 * of it is used.
 */
export function decodePlan(text: string): Result<GivenPlan, PlanError> {
  const whole = text.replace(/^\uFEFF/, '').trim();
  const [, code] = whole.split(TAKE_ADDRESS, 2);
  if (code !== undefined && !whole.startsWith('{')) return planOfCode(code.split(/\s/, 1)[0] ?? '');
  return /^[^\s{]+$/.test(whole) && !whole.includes('://') ? planOfCode(whole) : planOfJson(whole);
}
