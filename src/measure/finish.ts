import type { PictureSize } from '../capture/frame.ts';
import type { Exercise } from '../exercises/exercise.ts';
import type { Side } from '../pose/landmarks.ts';
import { median } from '../signal/median.ts';
import { type Deg, deg, type Ms, ms } from '../units.ts';
import { angleSeries } from './angle-series.ts';
import type { LegSample } from './leg-sample.ts';
import { measuredReps } from './measured-rep.ts';
import { findMovements, type Movements } from './movements.ts';
import { qualityOf } from './quality.ts';
import { readyIndex } from './ready.ts';
import type { MeasuredRep, SetResult } from './set-result.ts';

/** A lying leg at rest lies level: a level found within this of the horizontal is the hip landmark's offset and is taken out. Chosen. */
const LEVEL_OFFSET_DEG = 15;

/** What the measurement must know of a set. */
export interface SetSpec {
  readonly exercise: Exercise;
  readonly side: Side;
  readonly size: PictureSize;
  /** After how many complete repetitions the set is done; null: open-ended. */
  readonly targetReps: number | null;
  /** Whether it ends by itself, once the dose is done or the person has left: a live one does; a file is watched to its end. */
  readonly endsItself: boolean;
}

/**
 * Measures a whole set from its samples: both sources joined, smoothed without lag, parted into repetitions.
 * @param foundReadyMs when the set was found ready while it ran; null: never
 */
export function measureSamples(spec: SetSpec, samples: readonly LegSample[], foundReadyMs: Ms | null = null): SetResult {
  const { exercise } = spec;
  const frames = angleSeries(samples, exercise);
  const tMs = samples.map((s) => s.tMs);
  const angles = frames.map((f) => f?.deg ?? null);
  const movements = findMovements(
    frames.map((measured, i) => ({ tMs: ms(tMs[i] as number), measured })),
    exercise,
    readyIndex(tMs, angles, exercise.rule, foundReadyMs),
  );
  const zeroDeg = restLevel(exercise, movements);
  const reps = measuredReps(movements.found, { exercise, frames, tMs, zeroDeg, noiseDeg: movements.noiseDeg });
  const complete = reps.filter((r) => r.complete);
  const sign = exercise.rule.direction === 'rises' ? 1 : -1;
  return {
    exercise: exercise.id,
    side: spec.side,
    size: spec.size,
    frames: samples.length,
    framesUsed: frames.filter((f) => f !== null).length,
    durationMs: ms(samples.length > 1 ? (tMs[tMs.length - 1] as number) - (tMs[0] as number) : 0),
    reps,
    count: complete.length,
    partialCount: reps.length - complete.length,
    summary: summaryOf(complete),
    quality: qualityOf(samples, frames, exercise, spec),
    curve: { tMs, angleDeg: movements.smooth.map((v) => (v === null ? null : deg(v * sign - zeroDeg))) },
  };
}

function summaryOf(complete: readonly MeasuredRep[]): SetResult['summary'] {
  const middleOf = (pick: (r: MeasuredRep) => number): Deg => deg(median(complete.map(pick)) ?? 0);
  if (complete.length === 0) return null;
  return {
    medianPeakDeg: middleOf((r) => r.peakDeg),
    medianRangeDeg: middleOf((r) => r.rangeDeg),
    uncertaintyDeg: middleOf((r) => r.uncertaintyDeg),
  };
}

/** The resting level that is taken off a lying leg's elevation, in the sense of the angle itself. */
function restLevel({ angle, rule }: Exercise, { found, smooth }: Movements): number {
  if (angle !== 'leg-elevation') return 0;
  const sign = rule.direction === 'rises' ? 1 : -1;
  const starts = found.map((m) => m.startDeg);
  const level = median(starts.length > 0 ? starts : smooth.filter((v) => v !== null)) ?? 0;
  return Math.abs(level) <= LEVEL_OFFSET_DEG ? level * sign : 0;
}
