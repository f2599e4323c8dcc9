import type { CalendarDay } from './calendar-day.ts';
import { byMoment } from './entry.ts';
import type { Felt } from './felt.ts';
import type { SafetyLog } from './safety-log.ts';
import { symptomShift } from './symptom-shift.ts';

/** A rise between two reports that asks the questions again, points of 0 to 10: the MDC of the scale (Childs 2005, Spine 30:1331, abstract read). */
export const ASK_AGAIN_RISE = 2;

/** Why the red-flag questions are due. */
export type QuestionsReason = 'new-day' | 'prescription-changed' | 'symptom-rise' | 'new-kind' | 'further-down';

/**
 * Why the red-flag questions are to be asked before the next set of this day; none when they need not be. A change is: no round of questions yet on this
 * day, a prescription made since the last round, or, from the last report before that round on, symptoms stronger by `ASK_AGAIN_RISE`, of a
 * kind not there before, or further down the leg, between any two reports.
 */
export function questionsDue(
  log: Pick<SafetyLog, 'redFlags' | 'reports' | 'checkIns'> & { readonly prescriptions: readonly { readonly at: string }[] },
  day: CalendarDay,
): readonly QuestionsReason[] {
  const asked = log.redFlags
    .filter((round) => round.day === day)
    .toSorted(byMoment)
    .at(-1);
  if (!asked) return ['new-day'];
  const due = new Set<QuestionsReason>();
  if (log.prescriptions.some(({ at }) => at > asked.at)) due.add('prescription-changed');
  const told = [...log.reports, ...log.checkIns].toSorted(byMoment);
  const since = told.filter(({ at }) => at > asked.at);
  const known = told.findLast(({ at }) => at <= asked.at);
  const row: readonly Felt[] = known ? [known, ...since] : since;
  row.forEach((earlier, i) => {
    for (const later of row.slice(i + 1)) for (const reason of changes(earlier, later)) due.add(reason);
  });
  return [...due];
}

function changes(earlier: Felt, later: Felt): readonly QuestionsReason[] {
  const { intensity: was, kinds: before } = earlier;
  const { intensity: is, kinds: now } = later;
  const rise = was !== 'not-answered' && is !== 'not-answered' && is - was >= ASK_AGAIN_RISE;
  const newKind = before !== 'not-answered' && now !== 'not-answered' && now.some((kind) => !before.includes(kind));
  const further = symptomShift(earlier, later).kind === 'peripheralising';
  return [
    ...(rise ? (['symptom-rise'] as const) : []),
    ...(newKind ? (['new-kind'] as const) : []),
    ...(further ? (['further-down'] as const) : []),
  ];
}
