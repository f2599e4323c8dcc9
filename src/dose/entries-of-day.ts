import type { CalendarDay } from '../symptoms/calendar-day.ts';
import type { DoseLog } from './dose-log.ts';

/** What of a log concerns one day of sets, each in the log's order. */
export interface DayEntries extends Pick<DoseLog, 'reports' | 'redFlags' | 'done'> {
  /** Those that look back on the day. */
  readonly checkIns: DoseLog['checkIns'];
}

type Filling = { readonly [K in keyof DayEntries]: DayEntries[K][number][] };

const NOTHING: DayEntries = { reports: [], redFlags: [], done: [], checkIns: [] };

/** Logs never change, so that each is sorted by day once: many days of many lines are judged from one. */
const sorted = new WeakMap<DoseLog, ReadonlyMap<CalendarDay, DayEntries>>();

export function entriesOfDay(log: DoseLog, day: CalendarDay): DayEntries {
  const known = sorted.get(log) ?? byDay(log);
  sorted.set(log, known);
  return known.get(day) ?? NOTHING;
}

function byDay({ reports, redFlags, done, checkIns }: DoseLog): ReadonlyMap<CalendarDay, DayEntries> {
  const days = new Map<CalendarDay, Filling>();
  const of = (day: CalendarDay): Filling => {
    const found = days.get(day) ?? { reports: [], redFlags: [], done: [], checkIns: [] };
    days.set(day, found);
    return found;
  };
  for (const each of reports) of(each.day).reports.push(each);
  for (const each of redFlags) of(each.day).redFlags.push(each);
  for (const each of done) of(each.day).done.push(each);
  for (const each of checkIns) of(each.aboutDay).checkIns.push(each);
  return days;
}
