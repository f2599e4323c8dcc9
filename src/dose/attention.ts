import { type CalendarDay, daysBetween } from '../symptoms/calendar-day.ts';
import { isOffered, type OfferedStep, type PersonFacts, type StopFact } from './person-facts.ts';

/** A flare needs attention for so many days. Chosen: until the next visit in a week. */
export const FLARE_SHOWN_DAYS = 7;
/** With a plan and without a word for so many days somebody may have given up. Chosen. */
export const QUIET_DAYS = 7;

/** What of one person needs the therapist, the most urgent first. */
export type Attention =
  | { readonly kind: 'stopped'; readonly stop: StopFact }
  | { readonly kind: 'flare'; readonly day: CalendarDay; readonly reason: NonNullable<PersonFacts['flare']>['reason'] }
  | { readonly kind: 'step-proposed'; readonly steps: readonly OfferedStep[] }
  /** `days` since anything was told; null: nothing ever was. */
  | { readonly kind: 'quiet'; readonly days: number | null };

/**
 * What needs attention on a day.
 * @param seenUntil up to this day the therapist has seen it all: a flare of then, a step that rests on it and silence until then are no news.
 *   A stop stays until it is lifted.
 */
export function attentionOn(facts: PersonFacts, seenUntil: CalendarDay | null, day: CalendarDay): readonly Attention[] {
  const { stop, flare, steps, plan, lastActivity } = facts;
  const isNews = (about: CalendarDay): boolean => seenUntil === null || about > seenUntil;
  const found: Attention[] = [];
  if (stop) found.push({ kind: 'stopped', stop });
  if (flare && isNews(flare.day) && daysBetween(flare.day, day) <= FLARE_SHOWN_DAYS) found.push({ kind: 'flare', ...flare });
  // While sets are stopped, or straight after a flare, nobody is to do more.
  const offered = stop ? [] : steps.filter((step) => isOffered(step, day) && isNews(step.aboutDay));
  if (offered.length > 0) found.push({ kind: 'step-proposed', steps: offered });
  if (plan) {
    const heard = [plan.since, lastActivity, seenUntil].reduce<CalendarDay>((a, b) => (b && b > a ? b : a), plan.since);
    if (daysBetween(heard, day) >= QUIET_DAYS) {
      found.push({ kind: 'quiet', days: lastActivity && daysBetween(lastActivity, day) });
    }
  }
  return found;
}

const URGENCY: Readonly<Record<Attention['kind'], number>> = { stopped: 0, flare: 1, 'step-proposed': 2, quiet: 3 };
/** Higher than any. */
const NOTHING = 4;

/** Smaller is more urgent; an urgent red flag comes before weakness alone. */
export function urgencyOf([first]: readonly Attention[]): number {
  if (!first) return NOTHING;
  const toDoctor = first.kind === 'stopped' && first.stop.urgency !== null ? -1 : 0;
  return URGENCY[first.kind] + toDoctor;
}
