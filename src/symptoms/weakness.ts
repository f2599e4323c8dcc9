import { type CalendarDay, daysBetween } from './calendar-day.ts';
import type { CheckIn } from './check-in.ts';
import { byMoment } from './entry.ts';
import type { SafetyLog } from './safety-log.ts';
import { type WorseFinding, worseThanLast } from './self-check-change.ts';
import type { SymptomReport } from './symptom-report.ts';

/**
 * Weakness not named for this many days is new when it is named again. Chosen after the 14 days in which the NHS England (GIRFT) cauda equina pathway calls a
 * symptom new (read); somebody who has known weakness does not name it every time.
 */
export const NEW_AFTER_DAYS = 14;

/** How it was told that weakness is new or worse. */
export type WeaknessCause =
  /** Weakness is named, and was named neither the time before nor in the days of `NEW_AFTER_DAYS`. */
  | { readonly kind: 'new-weakness' }
  /** "Worse" in the next-day check-in. */
  | { readonly kind: 'told-worse' }
  | { readonly kind: 'self-check-worse'; readonly findings: readonly WorseFinding[] };

export interface WorseWeakness {
  readonly at: string;
  readonly cause: WeaknessCause;
}

/** Every moment at which weakness was told to be new or worse, oldest first. What is named in the very first report is where the person starts from. */
export function worseWeakness(log: Pick<SafetyLog, 'reports' | 'checkIns' | 'selfChecks'>): readonly WorseWeakness[] {
  return [...named([...log.reports, ...log.checkIns].toSorted(byMoment)), ...checked(log.selfChecks)].toSorted(byMoment);
}

type Told = SymptomReport | CheckIn;

/** In one pass, since a diary of many weeks is judged for many days. @param told oldest first */
function named(told: readonly Told[]): readonly WorseWeakness[] {
  const found: WorseWeakness[] = [];
  let last: Told | null = null;
  let lastNamed: CalendarDay | null = null;
  for (const report of told) {
    const { at, day } = report;
    const isRecent = lastNamed !== null && daysBetween(lastNamed, day) <= NEW_AFTER_DAYS;
    if (report.kind === 'check-in' && report.weakness === 'worse') found.push({ at, cause: { kind: 'told-worse' } });
    else if (last !== null && names(report) && !names(last) && !isRecent) found.push({ at, cause: { kind: 'new-weakness' } });
    if (report.kinds === 'not-answered') continue;
    last = report;
    if (names(report) && (lastNamed === null || day > lastNamed)) lastNamed = day;
  }
  return found;
}

const names = ({ kinds }: Told): boolean => kinds !== 'not-answered' && kinds.includes('weakness');

const checked = (selfChecks: SafetyLog['selfChecks']): readonly WorseWeakness[] =>
  selfChecks.flatMap((check) => {
    const findings = worseThanLast(check, selfChecks);
    return findings.length > 0 ? [{ at: check.at, cause: { kind: 'self-check-worse', findings } as const }] : [];
  });
