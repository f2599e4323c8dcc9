import type { CalendarDay } from '../../symptoms/calendar-day.ts';
import { byMoment } from '../../symptoms/entry.ts';
import { RED_FLAG_IDS, type RedFlagId } from '../../symptoms/red-flags.ts';
import type { SafetyLog } from '../../symptoms/safety-log.ts';
import { type WeaknessCause, worseWeakness } from '../../symptoms/weakness.ts';

/** What stopped the sets, or opened them again. `at`: ISO 8601, UTC. */
export type SafetyEvent = { readonly at: string; readonly day: CalendarDay } & (
  | { readonly kind: 'flags'; readonly flags: readonly RedFlagId[] }
  | { readonly kind: 'weakness'; readonly cause: WeaknessCause['kind'] }
  | { readonly kind: 'cleared'; readonly note: string }
);

export interface SafetyOfDays {
  /** How often the red-flag questions were asked. */
  readonly rounds: number;
  /** How many questions stayed open, over all rounds. */
  readonly unanswered: number;
  /** Oldest first. */
  readonly events: readonly SafetyEvent[];
}

/** The warning signs, weakness and clearances told from `from` to `to`, both included. What is new is told against all that was told before, too. */
export function safetyOfDays(log: SafetyLog, from: CalendarDay, to: CalendarDay): SafetyOfDays {
  const within = ({ day }: { readonly day: CalendarDay }) => day >= from && day <= to;
  const rounds = log.redFlags.filter(within);
  const dayOf = new Map([...log.reports, ...log.checkIns, ...log.selfChecks].map(({ at, day }) => [at, day]));
  const events: readonly SafetyEvent[] = [
    ...rounds.flatMap(({ at, day, answers }): readonly SafetyEvent[] => {
      const flags = RED_FLAG_IDS.filter((id) => answers[id] === 'yes');
      return flags.length > 0 ? [{ at, day, kind: 'flags', flags }] : [];
    }),
    ...worseWeakness(log).flatMap(({ at, cause }): readonly SafetyEvent[] => {
      const day = dayOf.get(at);
      return day !== undefined && within({ day }) ? [{ at, day, kind: 'weakness', cause: cause.kind }] : [];
    }),
    ...log.clearances.filter(within).map(({ at, day, note }): SafetyEvent => ({ at, day, kind: 'cleared', note })),
  ];
  return {
    rounds: rounds.length,
    unanswered: rounds.reduce((sum, { answers }) => sum + RED_FLAG_IDS.filter((id) => answers[id] === 'not-answered').length, 0),
    events: events.toSorted(byMoment),
  };
}
