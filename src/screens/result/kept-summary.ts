import { editedReps } from '../../record/rep-edit.ts';
import type { StoredSet } from '../../record/stored-set.ts';
import { median } from '../../signal/median.ts';
import { type Deg, deg } from '../../units.ts';

export interface KeptSummary {
  readonly medianRangeDeg: Deg;
  /** Half the width of the 95 % interval, the middle one of the repetitions. */
  readonly uncertaintyDeg: Deg;
}

/**
 * How far the counted repetitions went, with the changes by hand applied: the same middles as in the set's own summary, so that both agree
 * as long as nothing was changed. Also for a set that never got a result.
 * @returns null when no measured repetition is counted
 */
export function keptSummary(set: StoredSet): KeptSummary | null {
  const kept = editedReps(set).flatMap((r) => (r.kind === 'measured' && r.rep.complete && !r.struck ? [r.rep] : []));
  const range = median(kept.map((rep) => rep.rangeDeg));
  const uncertainty = median(kept.map((rep) => rep.uncertaintyDeg));
  return range === null || uncertainty === null ? null : { medianRangeDeg: deg(range), uncertaintyDeg: deg(uncertainty) };
}
