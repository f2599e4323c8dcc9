import type { CalendarDay } from '../symptoms/calendar-day.ts';
import type { CheckIn } from '../symptoms/check-in.ts';
import { byMoment } from '../symptoms/entry.ts';
import type { Felt } from '../symptoms/felt.ts';
import type { Place } from '../symptoms/place.ts';
import type { SymptomReport } from '../symptoms/symptom-report.ts';
import { symptomShift } from '../symptoms/symptom-shift.ts';
import { isOf, wasBegunFor } from './done-set.ts';
import type { Dose } from './dose.ts';
import type { DoseLog } from './dose-log.ts';
import { type DayEntries, entriesOfDay } from './entries-of-day.ts';
import type { PrescribedExercise } from './prescribed-exercise.ts';

/** What makes a day of sets a flare. Figures are points of 0 to 10. */
export type FlareReason =
  | { readonly kind: 'red-flag' }
  | { readonly kind: 'weakness' }
  | { readonly kind: 'further-down'; readonly from: Place | null; readonly to: Place | null }
  | { readonly kind: 'clear-rise'; readonly rise: number; readonly limit: number }
  | { readonly kind: 'over-limit'; readonly worst: number; readonly limit: number }
  | { readonly kind: 'not-settled' };

/** What keeps a day without a flare from being a good one. */
export type NotGoodReason =
  | { readonly kind: 'symptoms-not-answered' }
  | { readonly kind: 'next-day-not-answered' }
  | { readonly kind: 'mild-rise-settled' }
  /** A set of glides was ended because symptoms rose, even if they had settled when it was asked. */
  | { readonly kind: 'symptoms-rose' }
  /** Another line of the prescription flared, or a day since then. */
  | { readonly kind: 'flare-elsewhere' }
  | { readonly kind: 'dose-not-done'; readonly reps: number; readonly due: number };

/** How a day of sets of one line went, as far as it is told. */
export type DayVerdict =
  | { readonly kind: 'flare'; readonly reason: FlareReason }
  | { readonly kind: 'not-good'; readonly reason: NotGoodReason }
  | { readonly kind: 'good' };

const flare = (reason: FlareReason): DayVerdict => ({ kind: 'flare', reason });
const notGood = (kind: Exclude<NotGoodReason['kind'], 'dose-not-done'>): DayVerdict => ({ kind: 'not-good', reason: { kind } });

/**
 * Judges a day from the symptoms before its first set, after its sets, and in the next day's check-in, which concerns all of that day's lines.
 * A flare needs only one thing told; a good day needs everything told and done.
 * @param dose what was due for each leg on that day
 */
export function dayVerdict(item: PrescribedExercise, dose: Dose, log: DoseLog, day: CalendarDay): DayVerdict {
  const entries = entriesOfDay(log, day);
  const ofDay = entries.reports.toSorted(byMoment);
  const isOwn = ({ itemId }: SymptomReport) => itemId === null || itemId === item.id;
  const checkIn = entries.checkIns.toSorted(byMoment).at(-1) ?? null;
  const befores = ofDay.filter(({ moment }) => moment === 'before-set');
  const before = befores.find(isOwn) ?? befores[0] ?? null;
  const afters = ofDay.filter(({ moment }) => moment === 'after-set');
  const own = afters.filter(isOwn);

  if (entries.redFlags.some((round) => Object.values(round.answers).includes('yes'))) return flare({ kind: 'red-flag' });
  const reason = flareReason(item, before, own, checkIn);
  if (reason) return flare(reason);

  if (!before || own.length === 0 || ![before, ...own].every(isTold)) return notGood('symptoms-not-answered');
  if (!checkIn || !isTold(checkIn) || !isWhole(checkIn)) return notGood('next-day-not-answered');
  const others = afters.filter((report) => !isOwn(report));
  if (flareReason(item, before, others, null)) return notGood('flare-elsewhere');
  if ((riseOver(before, own, checkIn) ?? 0) > 0 || checkIn.afterwards === 'settled') return notGood('mild-rise-settled');
  if (entries.done.some((set) => set.glide?.stopped === 'symptoms' && wasBegunFor(item, set))) return notGood('symptoms-rose');
  const missing = undone(item, dose, entries);
  return missing ? { kind: 'not-good', reason: missing } : { kind: 'good' };
}

/** Intensity answered, and the places where there is anything to place. */
const isTold = ({ intensity, places, kinds }: Felt): boolean =>
  intensity === 0 || (intensity !== 'not-answered' && places !== 'not-answered' && kinds !== 'not-answered');

const isWhole = ({ worst, afterwards, weakness }: CheckIn): boolean =>
  worst !== 'not-answered' && afterwards !== 'not-answered' && weakness !== 'not-answered';

function flareReason(
  { progression, symptomLimit }: PrescribedExercise,
  before: SymptomReport | null,
  afters: readonly SymptomReport[],
  checkIn: CheckIn | null,
): FlareReason | null {
  const later: readonly Felt[] = checkIn ? [...afters, checkIn] : afters;
  if (checkIn?.weakness === 'worse' || later.some((felt) => before && hasNewWeakness(before, felt))) return { kind: 'weakness' };
  for (const felt of later) {
    const shift = before ? symptomShift(before, felt) : null;
    if (shift?.kind === 'peripheralising') return { kind: 'further-down', from: shift.from, to: shift.to };
  }
  const rise = before && riseOver(before, afters, checkIn);
  if (rise !== null && rise >= progression.clearRise) return { kind: 'clear-rise', rise, limit: progression.clearRise };
  const worst = worstOf(afters, checkIn);
  if (worst !== null && worst > symptomLimit) return { kind: 'over-limit', worst, limit: symptomLimit };
  if (checkIn && (checkIn.afterwards === 'not-settled' || (before && staysAbove(before, checkIn, progression.settledWithin))))
    return { kind: 'not-settled' };
  return null;
}

const hasNewWeakness = (before: Felt, after: Felt): boolean =>
  before.kinds !== 'not-answered' &&
  !before.kinds.includes('weakness') &&
  after.kinds !== 'not-answered' &&
  after.kinds.includes('weakness');

const staysAbove = (before: Felt, next: Felt, by: number): boolean =>
  before.intensity !== 'not-answered' && next.intensity !== 'not-answered' && next.intensity - before.intensity > by;

/** The strongest that was told after the sets; null when nobody answered. */
function worstOf(afters: readonly Felt[], checkIn: CheckIn | null): number | null {
  const told = [...afters.map(({ intensity }) => intensity), ...(checkIn ? [checkIn.intensity, checkIn.worst] : [])];
  const known = told.filter((each) => each !== 'not-answered');
  return known.length > 0 ? Math.max(...known) : null;
}

function riseOver(before: Felt, afters: readonly Felt[], checkIn: CheckIn | null): number | null {
  const worst = worstOf(afters, checkIn);
  return worst === null || before.intensity === 'not-answered' ? null : worst - before.intensity;
}

/** What is missing on the leg with fewer repetitions; null when enough was done. */
function undone(item: PrescribedExercise, dose: Dose, { done }: DayEntries): NotGoodReason | null {
  const sets = done.filter((set) => isOf(item, set));
  const due = dose.setsADay * dose.repsASet;
  const reps = Math.min(...item.sides.map((side) => sets.reduce((sum, set) => sum + (set.side === side ? set.reps : 0), 0)));
  return reps >= item.progression.doneShare * due ? null : { kind: 'dose-not-done', reps, due };
}
