import type { CalendarDay } from './calendar-day.ts';
import { byMoment } from './entry.ts';
import { placesOf } from './felt.ts';
import { mostDistant, type Place } from './place.ts';
import type { SafetyLog } from './safety-log.ts';
import { type SymptomShift, symptomShift } from './symptom-shift.ts';

/** One day's symptoms over all its reports and the check-in made on it. Null: nobody answered that on this day. */
export interface DaySymptoms {
  readonly day: CalendarDay;
  /** 0 to 10. */
  readonly least: number | null;
  readonly most: number | null;
  /** All places named; their most distant one says how far down the leg it went. */
  readonly places: readonly Place[] | null;
  readonly mostDistant: Place | null;
}

/** The days on which something was told, oldest first. */
export function symptomsByDay({ reports, checkIns }: Pick<SafetyLog, 'reports' | 'checkIns'>): readonly DaySymptoms[] {
  const told = [...reports, ...checkIns].toSorted(byMoment);
  return [...new Set(told.map(({ day }) => day))].toSorted().map((day) => {
    const ofDay = told.filter((each) => each.day === day);
    const intensities = ofDay.flatMap(({ intensity }) => (intensity === 'not-answered' ? [] : [intensity]));
    const answered = ofDay.flatMap((each) => placesOf(each) ?? []);
    const places = ofDay.some((each) => placesOf(each) !== null) ? answered : null;
    const some = intensities.length > 0;
    return {
      day,
      least: some ? Math.min(...intensities) : null,
      most: some ? Math.max(...intensities) : null,
      places,
      mostDistant: places && mostDistant(places),
    };
  });
}

/** Whether symptoms moved up or down the leg from the first of these days to the last, each by its most distant place. */
export function shiftOverDays(days: readonly DaySymptoms[]): SymptomShift {
  const known = days.filter(({ places }) => places !== null);
  const [first, last] = [known[0], known.at(-1)];
  if (!first?.places || !last?.places || first === last) return { kind: 'unknown' };
  return symptomShift({ intensity: 'not-answered', places: first.places }, { intensity: 'not-answered', places: last.places });
}
