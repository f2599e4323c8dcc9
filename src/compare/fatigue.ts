import { mean, sampleStandardDeviation } from 'simple-statistics';
import type { ExerciseId } from '../exercises/exercise.ts';
import type { MeasuredRep, SetResult } from '../measure/set-result.ts';
import { fail, ok, type Result } from '../result.ts';
import { median } from '../signal/median.ts';
import {
  LEAST_REPETITIONS,
  type RangeDifference,
  rangeDifference,
  type TooFewRepetitions,
  type Verdict,
} from './range-difference.ts';
import { seenByOf } from './seen-by-of.ts';
import { studentT95 } from './student-t.ts';
import { type PeakInterval, peakIntervals, type Tempo, tempoOf } from './tempo.ts';

/** A peak is known to one frame: a rectangle's standard deviation is its width over sqrt(12), and an interval has two ends. */
const FRAME_ERROR = Math.sqrt(2 / 12);
const THIRDS = 3;

/** The last third of a set's repetitions against its first. */
export interface Fatigue {
  /** Last minus first: negative when the movement became smaller. */
  readonly range: RangeDifference;
  /** Null when too few intervals were seen in one of the thirds. */
  readonly tempo: TempoChange | null;
}

export interface TempoChange {
  readonly first: Tempo;
  readonly last: Tempo;
  /** Last minus first, movements a minute: negative when it became slower. */
  readonly changePerMinute: number;
  /**
   * `real` when the mean intervals differ by more than t times the standard error of their difference: their own scatter, and what the frame rate
   * leaves open. t is Student's for the third with fewer intervals, which is on the safe side.
   */
  readonly verdict: Verdict;
}

/**
 * Fatigue across a set. It tells what the movement did, not why: effort, pain and boredom look the same.
 * @returns `too-few-repetitions` unless each third holds at least three complete repetitions
 */
export function fatigueOf(
  set: Pick<SetResult, 'reps' | 'curve'> & { readonly exercise: ExerciseId },
): Result<Fatigue, TooFewRepetitions> {
  const complete = set.reps.filter((rep) => rep.complete);
  const third = Math.floor(complete.length / THIRDS);
  const first = complete.slice(0, third);
  const last = complete.slice(complete.length - third);
  const ranges = (reps: readonly MeasuredRep[]) => reps.map((rep) => rep.rangeDeg);
  const range = rangeDifference(set.exercise, 'occasions', ranges(last), ranges(first), seenByOf(set.reps));
  if (!range.ok) return fail({ ...range.error, found: complete.length, needed: THIRDS * LEAST_REPETITIONS });
  const intervals = peakIntervals(set);
  return ok({ range: range.value, tempo: tempoChange(within(intervals, first), within(intervals, last), frameMs(set)) });
}

/** The intervals from the first of these repetitions to the last of them. */
function within(intervals: readonly PeakInterval[], reps: readonly MeasuredRep[]): readonly PeakInterval[] {
  const from = reps[0];
  const to = reps.at(-1);
  return from && to ? intervals.filter(({ endMs }) => endMs > from.peakMs && endMs <= to.peakMs) : [];
}

function tempoChange(first: readonly PeakInterval[], last: readonly PeakInterval[], frame: number): TempoChange | null {
  const before = tempoOf(first);
  const after = tempoOf(last);
  if (!before.ok || !after.ok) return null;
  const lengths = (intervals: readonly PeakInterval[]) => intervals.map((interval) => interval.lengthMs);
  const error = (values: number[]) =>
    Math.hypot(sampleStandardDeviation(values) / Math.sqrt(values.length), (FRAME_ERROR * frame) / values.length);
  const limit = studentT95(Math.min(first.length, last.length) - 1) * Math.hypot(error(lengths(first)), error(lengths(last)));
  return {
    first: before.value,
    last: after.value,
    changePerMinute: after.value.perMinute - before.value.perMinute,
    verdict: Math.abs(mean(lengths(last)) - mean(lengths(first))) > limit ? 'real' : 'within-error',
  };
}

/** Usual time from frame to frame. */
function frameMs({ curve: { tMs } }: Pick<SetResult, 'curve'>): number {
  return median(tMs.slice(1).map((t, i) => t - (tMs[i] as number))) ?? 0;
}
