import type { DoseLog } from '../../dose/dose-log.ts';
import { addDays, type CalendarDay } from '../../symptoms/calendar-day.ts';

/** How far the review looks back: two or eight weeks, or as far as there is anything. */
export const PERIODS = ['2', '8', 'all'] as const;
export type Period = (typeof PERIODS)[number];

const WEEK = 7;
/** So much more is read than is shown, days: the proposals of the first days follow from the days before. Chosen. */
const BEFORE = 28;
/** As far as any diary reaches: a hundred years. */
const EVERYTHING = 36_500;

const daysShown = (period: Exclude<Period, 'all'>): number => Number(period) * WEEK;

/** How many days of measured sets are read for a period. */
export const daysRead = (period: Period): number => (period === 'all' ? EVERYTHING : daysShown(period) + BEFORE);

/** The first day of a period that ends today; of `all`, the first day of which anything is known. */
export function firstDay(period: Period, log: DoseLog, today: CalendarDay): CalendarDay {
  if (period !== 'all') return addDays(today, 1 - daysShown(period));
  const told = [log.prescriptions, log.steps, log.redFlags, log.reports, log.checkIns, log.selfChecks, log.angleMarks, log.done];
  const days = told.flat().map(({ day }) => day);
  return [today, ...days].toSorted()[0] ?? today;
}
