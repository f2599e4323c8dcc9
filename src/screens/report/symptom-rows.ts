import { addDays, type CalendarDay } from '../../symptoms/calendar-day.ts';
import type { CheckIn } from '../../symptoms/check-in.ts';
import type { NotAnswered } from '../../symptoms/entry.ts';
import { mostDistant, type Place } from '../../symptoms/place.ts';
import type { SafetyLog } from '../../symptoms/safety-log.ts';
import { symptomsByDay } from '../../symptoms/symptoms-by-day.ts';

type Afterwards = Exclude<CheckIn['afterwards'], NotAnswered>;

/** What was told of some days in a row. Null: nobody said. */
export interface SymptomRow {
  /** The first of these days. */
  readonly from: CalendarDay;
  /** 0 to 10. */
  readonly least: number | null;
  readonly most: number | null;
  readonly furthest: Place | null;
  /** The worst of the check-ins that look back on these days. */
  readonly afterwards: Afterwards | null;
  readonly weaker: boolean;
}

/** From good to bad. */
const AFTERWARDS: readonly CheckIn['afterwards'][] = ['not-answered', 'no-flare', 'settled', 'not-settled'];

/**
 * Symptoms and check-ins of the days from `from` to `to`, both included, so many days a row; rows of which nothing was told are left out. A check-in's look
 * back stands on the day it looks back on, what was felt when it was made on the day it was made.
 */
export function symptomRows(
  log: Pick<SafetyLog, 'reports' | 'checkIns'>,
  from: CalendarDay,
  to: CalendarDay,
  daysARow: number,
): readonly SymptomRow[] {
  const days = symptomsByDay(log);
  const rows: SymptomRow[] = [];
  for (let first = from; first <= to; first = addDays(first, daysARow)) {
    const after = addDays(first, daysARow);
    const within = (day: CalendarDay) => day >= first && day < after && day <= to;
    const told = days.filter(({ day }) => within(day));
    const checkIns = log.checkIns.filter(({ aboutDay }) => within(aboutDay));
    if (told.length === 0 && checkIns.length === 0) continue;
    const known = (of: 'least' | 'most') => told.flatMap((day) => day[of] ?? []);
    const worst = checkIns.map(({ afterwards }) => afterwards).toSorted((a, b) => AFTERWARDS.indexOf(a) - AFTERWARDS.indexOf(b));
    const afterwards = worst.at(-1) ?? 'not-answered';
    rows.push({
      from: first,
      least: known('least').length > 0 ? Math.min(...known('least')) : null,
      most: known('most').length > 0 ? Math.max(...known('most')) : null,
      furthest: mostDistant(told.flatMap(({ places }) => places ?? [])),
      afterwards: afterwards === 'not-answered' ? null : afterwards,
      weaker: checkIns.some(({ weakness }) => weakness === 'worse'),
    });
  }
  return rows;
}
