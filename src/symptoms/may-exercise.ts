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
 * - Any yes to a red flag stops until a clearance logged after it. A later no opens nothing: the question asks what is new or worse, and a sign that stays as it was
 *   is neither, yet nobody has looked at it.
 * - Weakness told to be new or worse stops until a clearance, too.
 * A yes told at the same moment as a clearance counts as later than it.
 */
export function mayExercise(log: SafetyLog, day: CalendarDay): MayExercise {
  const until = <T extends { readonly day: CalendarDay }>(entries: readonly T[]) => entries.filter((each) => each.day <= day);
  const clearedAt = until(log.clearances).toSorted(byMoment).at(-1)?.at ?? '';
  const open = until(log.redFlags).filter(({ at }) => at >= clearedAt);
  const flags = RED_FLAG_IDS.filter((id) => open.some(({ answers }) => answers[id] === 'yes'));
  const told = { reports: until(log.reports), checkIns: until(log.checkIns), selfChecks: until(log.selfChecks) };
  const weakness = worseWeakness(told).flatMap(({ at, cause }) => (at < clearedAt ? [] : [cause]));
  if (flags.length === 0 && weakness.length === 0) return { kind: 'may' };
  return { kind: 'stopped', flags, weakness, urgency: flags.length > 0 ? mostUrgent(flags) : null };
}
