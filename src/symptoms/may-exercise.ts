import type { CalendarDay } from './calendar-day.ts';
import { byMoment } from './entry.ts';
import { mostUrgent, RED_FLAG_IDS, type RedFlagId, type Urgency } from './red-flags.ts';
import type { SafetyLog } from './safety-log.ts';
import { type WeaknessCause, worseWeakness } from './weakness.ts';

/** Why no set may be started. A red flag is for urgent care; weakness is a reason to contact the therapist before going on. */
export interface Stop {
  readonly kind: 'stopped';
  readonly flags: readonly RedFlagId[];
  readonly weakness: readonly WeaknessCause[];
  /** Of the flags: whom to call. Null when it is weakness alone. */
  readonly urgency: Urgency | null;
}
export type MayExercise = { readonly kind: 'may' } | Stop;

/**
 * Whether a set may be started on a day.
 * - Any yes to a red flag stops. On that day only a clearance logged after it opens again: answering no later the same day does not.
 * - On a later day the stop lasts until the question is answered no, or a clearance; leaving it unanswered opens nothing.
 * - Weakness told to be new or worse stops until a clearance.
 * A yes told at the same moment as a clearance counts as later than it.
 */
export function mayExercise(log: SafetyLog, day: CalendarDay): MayExercise {
  const until = <T extends { readonly day: CalendarDay }>(entries: readonly T[]) => entries.filter((each) => each.day <= day);
  const clearedAt = until(log.clearances).toSorted(byMoment).at(-1)?.at ?? '';
  const raised = new Map<RedFlagId, CalendarDay>();
  for (const round of until(log.redFlags).toSorted(byMoment)) {
    if (round.at < clearedAt) continue;
    for (const id of RED_FLAG_IDS) {
      const raisedOn = raised.get(id);
      if (round.answers[id] === 'yes') raised.set(id, round.day);
      else if (round.answers[id] === 'no' && raisedOn !== undefined && round.day > raisedOn) raised.delete(id);
    }
  }
  const flags = RED_FLAG_IDS.filter((id) => raised.has(id));
  const told = { reports: until(log.reports), checkIns: until(log.checkIns), selfChecks: until(log.selfChecks) };
  const weakness = worseWeakness(told).flatMap(({ at, cause }) => (at < clearedAt ? [] : [cause]));
  if (flags.length === 0 && weakness.length === 0) return { kind: 'may' };
  return { kind: 'stopped', flags, weakness, urgency: flags.length > 0 ? mostUrgent(flags) : null };
}
