import { givenPlan, withoutName } from '../../dose/given-plan.ts';
import type { DiaryEntry } from '../diary-entry.ts';
import { sameValue } from '../same-value.ts';

/**
 * Whether two entries of one id say the same. A plan stands under one id with the therapist who wrote it and with whoever took it on, each with their own moment
 * and perhaps without the name: that is no contradiction.
 */
export function sameEntry(a: DiaryEntry, b: DiaryEntry): boolean {
  if (sameValue(a, b)) return true;
  if (a.kind !== 'prescription' || b.kind !== 'prescription') return false;
  return sameValue(withoutName(givenPlan(a)), withoutName(givenPlan(b)));
}
