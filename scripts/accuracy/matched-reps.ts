import type { MeasuredRep, SetResult } from '../../src/measure/set-result.ts';
import { median } from '../../src/signal/median.ts';
import type { ClipWithTruth, TrueRep } from './clip-with-truth.ts';

/** A complete repetition as measured, against the true one it overlaps most in time. Degrees; errors are measured minus true. */
export interface MatchedRep {
  readonly trueRangeDeg: number;
  readonly rangeErrorDeg: number;
  /** Of a leg raise: above the leg's own rest, as it is reported. */
  readonly peakErrorDeg: number;
  /** Half the width of the 95 % interval of the range. */
  readonly uncertaintyDeg: number;
  /** Whether the 95 % interval of the range holds the truth. */
  readonly held: boolean;
}

const overlapMs = (rep: MeasuredRep, real: TrueRep): number =>
  Math.min(rep.endMs, real.endMs) - Math.max(rep.startMs, real.startMs);

/** Pairs of a measured and a true repetition, the longest overlap first; each is in one pair at most. */
export function matchedReps(result: Pick<SetResult, 'reps'>, { exercise, truth }: Pick<ClipWithTruth, 'exercise' | 'truth'>) {
  const complete = result.reps.filter((rep) => rep.complete);
  const pairs = complete
    .flatMap((rep) => truth.reps.map((real) => ({ rep, real, overlap: overlapMs(rep, real) })))
    .filter(({ overlap }) => overlap > 0)
    .sort((a, b) => b.overlap - a.overlap);
  const taken = new Set<MeasuredRep | TrueRep>();
  const restDeg = exercise === 'leg-raise' ? (median(truth.reps.map((real) => real.trueStartDeg)) ?? 0) : 0;
  const matched: MatchedRep[] = [];
  for (const { rep, real } of pairs) {
    if (taken.has(rep) || taken.has(real)) continue;
    taken.add(rep).add(real);
    const rangeErrorDeg = rep.rangeDeg - real.trueRangeDeg;
    matched.push({
      trueRangeDeg: real.trueRangeDeg,
      rangeErrorDeg,
      peakErrorDeg: rep.peakDeg - (real.truePeakDeg - restDeg),
      uncertaintyDeg: rep.uncertaintyDeg,
      held: Math.abs(rangeErrorDeg) <= rep.uncertaintyDeg,
    });
  }
  return matched;
}
