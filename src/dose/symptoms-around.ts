import type { SymptomReport } from '../symptoms/symptom-report.ts';
import type { DoneSet } from './done-set.ts';
import type { DoseLog } from './dose-log.ts';

/** What was told of one set. Null: nobody told it. */
export interface SymptomsAround {
  readonly before: SymptomReport | null;
  readonly after: SymptomReport | null;
}

const newest = (reports: readonly SymptomReport[]): SymptomReport | null =>
  reports.reduce<SymptomReport | null>((last, report) => (last && last.at >= report.at ? last : report), null);

/**
 * Symptoms before and after a set. The report after names its set. The one before is told on the way into it, when there is no set to name yet: the newest of
 * its line before the set's end, unless another set of the line came in between. Of a set of no line nothing before is known.
 */
export function symptomsAround(
  { reports, done }: Pick<DoseLog, 'reports' | 'done'>,
  { id, itemId, endedAt }: Pick<DoneSet, 'id' | 'itemId' | 'endedAt'>,
): SymptomsAround {
  const after = newest(reports.filter((report) => report.moment === 'after-set' && report.setId === id));
  const line = itemId ?? after?.itemId ?? null;
  if (line === null) return { before: null, after };
  const others = done.filter((set) => set.itemId === line && set.id !== id && set.endedAt <= endedAt);
  const last =
    others
      .map((set) => set.endedAt)
      .toSorted()
      .at(-1) ?? '';
  const isBefore = ({ moment, itemId: of, at }: SymptomReport) =>
    moment === 'before-set' && of === line && at <= endedAt && at > last;
  return { before: newest(reports.filter(isBefore)), after };
}
