import { currentPrescription, type Prescription } from '../dose/prescription.ts';
import type { DiaryEntry } from '../record/diary-entry.ts';
import type { StoredSet } from '../record/stored-set.ts';
import { tableSets } from '../record/table-sets.ts';
import type { CalendarDay } from '../symptoms/calendar-day.ts';

export interface Period {
  readonly from: CalendarDay;
  readonly to: CalendarDay;
}

/** What of somebody's records belongs to some days. */
export interface PeriodRecords {
  readonly sets: readonly StoredSet[];
  readonly entries: readonly DiaryEntry[];
}

/** The plan that held when the days began, and its steps until then: without them nobody could say what was due. */
function heldBefore(diary: readonly DiaryEntry[], from: CalendarDay): readonly DiaryEntry[] {
  const before = diary.filter(({ day }) => day < from);
  const plan = currentPrescription(before.filter((entry): entry is Prescription => entry.kind === 'prescription'));
  return plan ? [plan, ...before.filter((entry) => entry.kind === 'dose-step' && entry.prescriptionId === plan.id)] : [];
}

/**
 * The records of the days from one to another, both included, with the plan that held when they began. What is invented is left out: it is no record of a person.
 * @param timeZone IANA name; on which day a measured set was done when no link says so
 */
export function recordsOfPeriod(
  sets: readonly StoredSet[],
  diary: readonly DiaryEntry[],
  { from, to }: Period,
  timeZone: string,
): PeriodRecords {
  const own = diary.filter(({ origin }) => origin === 'own');
  const isIn = ({ day }: { readonly day: CalendarDay }) => day >= from && day <= to;
  return {
    sets: tableSets(sets, diary, timeZone)
      .filter((each) => each.origin === 'own' && isIn(each))
      .map(({ set }) => set),
    entries: [...heldBefore(own, from), ...own.filter(isIn)],
  };
}
