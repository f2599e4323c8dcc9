import type { Side } from '../pose/landmarks.ts';
import { type CalendarDay, daysBetween } from './calendar-day.ts';
import { byMoment } from './entry.ts';
import { BIG_TOE, type SelfCheck, type SelfCheckFinding, type SelfCheckId } from './self-check.ts';

/** Fewer steps on the heels by this many is worse. Chosen: one or two fewer of ten happens by counting. */
export const WORSE_BY_STEPS = 3;
/** A heel stand is worse when it is shorter by this many seconds and by this share of the last. Chosen: nothing published was found. */
export const WORSE_BY_S = 3;
export const WORSE_BY_SHARE = 0.3;

/** One check of one leg that came out worse than the last time it was answered. A reason for the advice to contact the therapist. */
export interface WorseFinding {
  readonly check: SelfCheckId;
  readonly side: Side;
  readonly before: SelfCheckFinding['found'];
  readonly now: SelfCheckFinding['found'];
}

/** What a check found worse than the ones before it, each leg against its last answer. Not answered is no answer, neither worse nor better. */
export function worseThanLast(now: SelfCheck, history: readonly SelfCheck[]): readonly WorseFinding[] {
  const earlier = history.filter((each) => byMoment(each, now) < 0).toSorted(byMoment);
  return now.findings.flatMap((finding) => {
    const last = earlier
      .flatMap(({ findings }) => findings)
      .findLast(({ check, side, found }) => check === finding.check && side === finding.side && found !== 'not-answered');
    if (!last || !isWorse(last, finding)) return [];
    return [{ check: finding.check, side: finding.side, before: last.found, now: finding.found }];
  });
}

function isWorse(last: SelfCheckFinding, now: SelfCheckFinding): boolean {
  const [was, is] = [last.found, now.found];
  if (was === 'not-answered' || is === 'not-answered') return false;
  switch (now.check) {
    case 'big-toe':
      return strength(is) < strength(was);
    case 'heel-walk':
      return Number(was) - Number(is) >= WORSE_BY_STEPS;
    case 'heel-stand':
      return Number(was) - Number(is) >= Math.max(WORSE_BY_S, WORSE_BY_SHARE * Number(was));
    case 'foot-slap':
    case 'forefoot-sinks':
      return was === 'no' && is === 'yes';
    default:
      return now satisfies never;
  }
}

const WEAK_TO_STRONG: readonly SelfCheckFinding['found'][] = BIG_TOE;
const strength = (found: SelfCheckFinding['found']): number => WEAK_TO_STRONG.indexOf(found);

/** The prescribed checks whose last answer on some leg is `everyDays` old or older, or that have none. */
export function selfChecksDue(
  {
    checks,
    sides,
    everyDays,
  }: { readonly checks: readonly SelfCheckId[]; readonly sides: readonly Side[]; readonly everyDays: number },
  history: readonly SelfCheck[],
  day: CalendarDay,
): readonly SelfCheckId[] {
  const recent = history.filter((each) => daysBetween(each.day, day) < everyDays && each.day <= day);
  const answered = (check: SelfCheckId, side: Side) =>
    recent.some(({ findings }) =>
      findings.some((each) => each.check === check && each.side === side && each.found !== 'not-answered'),
    );
  return checks.filter((check) => !sides.every((side) => answered(check, side)));
}
