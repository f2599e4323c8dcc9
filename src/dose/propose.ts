import { addDays, type CalendarDay, daysBetween } from '../symptoms/calendar-day.ts';
import { mayExercise, type Stop } from '../symptoms/may-exercise.ts';
import { type DayVerdict, dayVerdict, type FlareReason, type NotGoodReason } from './day-verdict.ts';
import { isOf } from './done-set.ts';
import { type Dose, sameDose } from './dose.ts';
import { steppedBack, steppedUp } from './dose-change.ts';
import type { DoseLog } from './dose-log.ts';
import { currentDose, type DoseStep } from './dose-step.ts';
import { asLinesNow } from './lines-now.ts';
import type { PrescribedExercise } from './prescribed-exercise.ts';
import type { Prescription } from './prescription.ts';
import type { ProgressionRule } from './progression-rule.ts';

/** Judges a day as `dayVerdict` does. */
export type Judge = typeof dayVerdict;

/** Why the dose stays. */
export type HoldReason =
  | NotGoodReason
  | { readonly kind: 'nothing-done-yet' }
  | { readonly kind: 'changed-today' }
  /** The day was the reason for a change already. */
  | { readonly kind: 'already-judged' }
  /** The dose is not raised in the middle of a day. */
  | { readonly kind: 'begun-today' }
  | { readonly kind: 'too-long-ago'; readonly days: number; readonly limit: number }
  | { readonly kind: 'more-good-days'; readonly have: number; readonly need: number }
  | { readonly kind: 'at-limit' };

/** What to do next with one line, and why. Nobody has to take it; doing less is always allowed. `aboutDay`: the day that was judged. */
export type Proposal =
  | { readonly kind: 'up'; readonly from: Dose; readonly to: Dose; readonly aboutDay: CalendarDay; readonly goodDays: number }
  | { readonly kind: 'hold'; readonly from: Dose; readonly aboutDay: CalendarDay | null; readonly reason: HoldReason }
  | {
      readonly kind: 'back';
      readonly from: Dose;
      readonly to: Dose;
      readonly aboutDay: CalendarDay;
      readonly reason: FlareReason;
    }
  /** A flare on the least dose: nothing to step back to, so the therapist is to be asked. */
  | { readonly kind: 'contact'; readonly from: Dose; readonly aboutDay: CalendarDay; readonly reason: FlareReason }
  /** A red flag, or weakness that is new or worse: no sets. */
  | { readonly kind: 'stop'; readonly from: Dose; readonly stop: Stop };

/**
 * The progression rule, see docs/dose-rules.md. In this order: a stop wins; a flare on the last day of sets, this day's included, steps back, once for each day;
 * then a step up needs a last day of sets that was good in everything, on this day neither a change nor a set yet, good days enough, and room
 * below the therapist's limits; all else holds.
 * @param judge `dayVerdict`, or the same with a memory, for who asks about many days
 */
export function propose(
  prescription: Prescription,
  item: PrescribedExercise,
  whole: DoseLog,
  day: CalendarDay,
  judge: Judge = dayVerdict,
): Proposal {
  const log = asLinesNow(whole, prescription);
  const from = currentDose(prescription, item, log.steps, day);
  const gate = mayExercise(log, day);
  if (gate.kind === 'stopped') return { kind: 'stop', from, stop: gate };

  const days = judgedDays(prescription, item, log, day, judge);
  const last = days.at(-1);
  const hold = (reason: HoldReason): Proposal => ({ kind: 'hold', from, aboutDay: last?.day ?? null, reason });
  if (!last) return hold({ kind: 'nothing-done-yet' });

  const steps = log.steps.filter((step) => step.itemId === item.id && step.day <= day);
  const isJudged = (judged: JudgedDay) => steps.some(({ aboutDay }) => aboutDay === judged.day);
  for (const { verdict, ...judged } of days.slice(last.day === day ? -2 : -1).toReversed()) {
    if (verdict.kind !== 'flare') continue;
    if (isJudged({ ...judged, verdict })) return hold({ kind: 'already-judged' });
    const to = steppedBack(from, item);
    const { reason } = verdict;
    return sameDose(from, to)
      ? { kind: 'contact', from, aboutDay: judged.day, reason }
      : { kind: 'back', from, to, aboutDay: judged.day, reason };
  }

  const { verdict } = last;
  if (steps.some((step) => step.day === day)) return hold({ kind: 'changed-today' });
  if (last.day === day) return hold({ kind: 'begun-today' });
  if (verdict.kind === 'not-good') return hold(verdict.reason);
  if (isJudged(last)) return hold({ kind: 'already-judged' });
  const { freshDays } = item.progression;
  const age = daysBetween(last.day, day);
  if (age > freshDays) return hold({ kind: 'too-long-ago', days: age, limit: freshDays });
  // A flare on a day since then, of whatever line, or without any set.
  const since = Array.from({ length: age }, (_, i) => addDays(day, -i));
  const flares = (other: PrescribedExercise) =>
    since.some((each) => judge(other, currentDose(prescription, other, log.steps, each), log, each).kind === 'flare');
  if (prescription.items.some(flares)) return hold({ kind: 'flare-elsewhere' });
  const { have, need } = goodDays(days, steps, item.progression);
  if (have < need) return hold({ kind: 'more-good-days', have, need });
  const to = steppedUp(from, item.progression);
  return sameDose(from, to) ? hold({ kind: 'at-limit' }) : { kind: 'up', from, to, aboutDay: last.day, goodDays: have };
}

interface JudgedDay {
  readonly day: CalendarDay;
  readonly verdict: DayVerdict;
}

/** The days up to this one on which the line was done, oldest first. */
function judgedDays(
  prescription: Prescription,
  item: PrescribedExercise,
  log: DoseLog,
  until: CalendarDay,
  judge: Judge,
): readonly JudgedDay[] {
  const days = new Set(log.done.flatMap((set) => (set.day <= until && isOf(item, set) ? [set.day] : [])));
  return [...days].toSorted().map((day) => ({
    day,
    verdict: judge(item, currentDose(prescription, item, log.steps, day), log, day),
  }));
}

/** The good days in a row up to the last, none of which was the reason for a change yet, and how many it takes: more since a flare. */
function goodDays(
  days: readonly JudgedDay[],
  steps: readonly DoseStep[],
  rule: ProgressionRule,
): { readonly have: number; readonly need: number } {
  const bad = days.findLastIndex(({ day, verdict }) => verdict.kind !== 'good' || steps.some(({ aboutDay }) => aboutDay === day));
  const flared = days.findLast(({ verdict }) => verdict.kind === 'flare')?.day;
  const recovered = flared === undefined || steps.some(({ direction, day }) => direction === 'up' && day > flared);
  return { have: days.length - 1 - bad, need: recovered ? rule.goodDays : rule.goodDaysAfterFlare };
}
