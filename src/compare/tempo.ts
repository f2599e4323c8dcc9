import { mean, sampleStandardDeviation } from 'simple-statistics';
import type { SetResult } from '../measure/set-result.ts';
import { fail, ok, type Result } from '../result.ts';
import { type Ms, ms, type Ratio, ratio } from '../units.ts';

const MS_PER_MINUTE = 60_000;
/** A variation needs two. */
const LEAST_INTERVALS = 2;

/** From one peak to the next; `endMs` is the later peak. */
export interface PeakInterval {
  readonly endMs: Ms;
  readonly lengthMs: Ms;
}

/** How quickly and how evenly movements followed each other. */
export interface Tempo {
  readonly perMinute: number;
  /** Standard deviation of the intervals over their mean: 0 is a clockwork. */
  readonly variation: Ratio;
  readonly intervals: number;
}

export interface TooFewIntervals {
  readonly kind: 'too-few-intervals';
  readonly found: number;
  readonly needed: number;
}

/**
 * Times between the peaks of neighbouring movements, partial ones included: they keep time as well. An interval in which the angle was lost is left
 * out, since a movement may have gone unseen in it.
 */
export function peakIntervals({ reps, curve }: Pick<SetResult, 'reps' | 'curve'>): readonly PeakInterval[] {
  const lost = curve.tMs.filter((_, i) => curve.angleDeg[i] === null);
  return reps.slice(1).flatMap(({ peakMs }, i) => {
    const before = reps[i]?.peakMs;
    if (before === undefined || lost.some((t) => t > before && t < peakMs)) return [];
    return [{ endMs: peakMs, lengthMs: ms(peakMs - before) }];
  });
}

/** Tempo over these intervals. */
export function tempoOf(intervals: readonly PeakInterval[]): Result<Tempo, TooFewIntervals> {
  if (intervals.length < LEAST_INTERVALS)
    return fail({ kind: 'too-few-intervals', found: intervals.length, needed: LEAST_INTERVALS });
  const lengths = intervals.map((interval) => interval.lengthMs);
  const typical = mean(lengths);
  return ok({
    perMinute: MS_PER_MINUTE / typical,
    variation: ratio(sampleStandardDeviation(lengths) / typical),
    intervals: lengths.length,
  });
}
