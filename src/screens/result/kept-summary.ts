import type { StoredSet } from '../../record/stored-set.ts';
import { median } from '../../signal/median.ts';
import { type Deg, deg, type Ms, ms } from '../../units.ts';
import { keptReps } from '../parts/kept-reps.ts';

export interface KeptSummary {
  readonly medianRangeDeg: Deg;
  /** Half the width of the 95 % interval, the middle one of the repetitions. */
  readonly uncertaintyDeg: Deg;
  /** Heel stands: how long the forefoot stayed up; null for other exercises and while it is not known. */
  readonly medianUpMs: Ms | null;
}

/**
 * How far the counted repetitions went, with the changes by hand applied: the same middles as in the set's own summary, so that both agree
 * as long as nothing was changed. Also for a set that never got a result.
 * @returns null when no measured repetition is counted
 */
export function keptSummary(set: StoredSet): KeptSummary | null {
  const kept = keptReps(set).filter((rep) => rep.complete);
  const range = median(kept.map((rep) => rep.rangeDeg));
  const uncertainty = median(kept.map((rep) => rep.uncertaintyDeg));
  if (range === null || uncertainty === null) return null;
  const up = median(kept.flatMap((rep) => rep.upMs ?? []));
  return { medianRangeDeg: deg(range), uncertaintyDeg: deg(uncertainty), medianUpMs: up === null ? null : ms(up) };
}
