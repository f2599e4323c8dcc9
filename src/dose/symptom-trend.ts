import type { Verdict } from '../compare/range-difference.ts';
import { median } from '../signal/median.ts';
import type { DaySymptoms } from '../symptoms/symptoms-by-day.ts';
import { THRESHOLDS } from './progression-rule.ts';

/** So many days at each end are taken together, so that one bad evening does not decide. Chosen. */
const MOST_DAYS = 3;

/** How the strongest symptoms of a day changed over some days, points of 0 to 10. */
export interface SymptomTrend {
  /** Medians of the strongest of the first days told and of the last. */
  readonly earlier: number;
  readonly later: number;
  /** Later minus earlier: negative when there is less. */
  readonly change: number;
  /** From how much on a change is real: the minimal detectable change of the scale, see docs/dose-rules.md. */
  readonly limit: number;
  readonly verdict: Verdict;
  /** How many days each of the two is the middle of. */
  readonly daysEach: number;
}

/** @param days oldest first @returns null when it was told on fewer than two days */
export function symptomTrend(days: readonly DaySymptoms[]): SymptomTrend | null {
  const told = days.flatMap(({ most }) => most ?? []);
  const daysEach = Math.min(MOST_DAYS, Math.floor(told.length / 2));
  const earlier = median(told.slice(0, daysEach));
  const later = median(told.slice(told.length - daysEach));
  if (daysEach === 0 || earlier === null || later === null) return null;
  const limit = THRESHOLDS.clearRise;
  const change = later - earlier;
  return { earlier, later, change, limit, verdict: Math.abs(change) >= limit ? 'real' : 'within-error', daysEach };
}
