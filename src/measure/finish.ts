import type { PictureSize } from '../capture/frame.ts';
import type { Exercise } from '../exercises/exercise.ts';
import type { Side } from '../pose/landmarks.ts';
import type { RepRule } from '../reps/rep-rule.ts';
import { type FoundMovement, segmentSet } from '../reps/segment-set.ts';
import { median } from '../signal/median.ts';
import { smoothZeroLag } from '../signal/zero-lag.ts';
import { type Deg, deg, ms } from '../units.ts';
import { type AngleInFrame, angleSeries } from './angle-series.ts';
import type { LegSample } from './leg-sample.ts';
import { qualityOf } from './quality.ts';
import { readyIndex } from './ready.ts';
import type { AngleSource, MeasuredRep, RepFlag, SetResult } from './set-result.ts';
import { rangeUncertainty } from './uncertainty.ts';

/** Holes in the measurement up to this long are bridged; a longer one parts the set. Chosen: shorter than any tap's way up and down. */
export const BRIDGE_MS = 250;
/** A leg raised with the knee bent further than at rest by this much is flagged. Common practice; a therapist's limit takes its place. */
const KNEE_LIMIT_DEG = 15;
/** A lying leg at rest lies level: a level found within this of the horizontal is the hip landmark's offset and is taken out. Chosen. */
const LEVEL_OFFSET_DEG = 15;
/** Standard deviations of noise that a movement must exceed to be noticed. Chosen. */
const NOTICE_SIGMAS = 5;

/** What the measurement must know of a set. */
export interface SetSpec {
  readonly exercise: Exercise;
  readonly side: Side;
  readonly size: PictureSize;
  /** After how many complete repetitions the set is done; null: open-ended. */
  readonly targetReps: number | null;
}

/** Measures a whole set from its samples: both sources joined, smoothed without lag, parted into repetitions. */
export function measureSamples(spec: SetSpec, samples: readonly LegSample[]): SetResult {
  const { exercise } = spec;
  const frames = angleSeries(samples, exercise);
  const tMs = samples.map((s) => s.tMs);
  const ready = readyIndex(
    tMs,
    frames.map((f) => f?.deg ?? null),
    exercise.rule,
  );
  const sign = exercise.rule.direction === 'rises' ? 1 : -1;
  const smooth = smoothZeroLag(
    frames.map((f, i) => ({
      tMs: tMs[i] as number,
      value: f && ready !== null && i >= ready ? f.deg * sign : null,
      variance: f?.variance ?? 1,
    })),
    { acceleration: exercise.acceleration, bridgeMs: BRIDGE_MS },
  );
  const noiseDeg = noiseOf(frames);
  const rule: RepRule = { ...exercise.rule, noticeDeg: deg(Math.max(exercise.rule.noticeDeg, NOTICE_SIGMAS * noiseDeg)) };
  const found = segmentSet(
    smooth.map((v, i) => ({ tMs: ms(tMs[i] as number), deg: v === null ? null : deg(v) })),
    rule,
  );
  const zero = restLevel(exercise, found, smooth, sign);
  const reps = found.map((m, i) => repOf(m, i + 1, { exercise, frames, tMs, sign, zero, noiseDeg }));
  const complete = reps.filter((r) => r.complete);
  const middleOf = (pick: (r: MeasuredRep) => number): Deg => deg(median(complete.map(pick)) ?? 0);
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
    summary:
      complete.length === 0
        ? null
        : {
            medianPeakDeg: middleOf((r) => r.peakDeg),
            medianRangeDeg: middleOf((r) => r.rangeDeg),
            uncertaintyDeg: middleOf((r) => r.uncertaintyDeg),
          },
    quality: qualityOf(samples, frames, exercise, spec),
    curve: { tMs, angleDeg: smooth.map((v) => (v === null ? null : deg(v * sign - zero))) },
  };
}

interface RepContext {
  readonly exercise: Exercise;
  readonly frames: readonly (AngleInFrame | null)[];
  readonly tMs: readonly number[];
  readonly sign: number;
  readonly zero: number;
  readonly noiseDeg: number;
}

function repOf(m: FoundMovement, number: number, { exercise, frames, tMs, sign, zero, noiseDeg }: RepContext): MeasuredRep {
  const during = frames.filter((_, i) => (tMs[i] as number) >= m.startMs && (tMs[i] as number) <= m.endMs);
  const flags: RepFlag[] = [];
  if (!m.complete) flags.push('partial');
  if (!m.returned) flags.push('tracking-gap');
  if (exercise.angle === 'leg-elevation' && kneeBends(frames, tMs, m)) flags.push('knee-bent');
  const source = weakestSource(during);
  return {
    number,
    startMs: m.startMs,
    peakMs: m.peakMs,
    endMs: m.endMs,
    startDeg: deg(m.startDeg * sign - zero),
    peakDeg: deg(m.peakDeg * sign - zero),
    rangeDeg: m.rangeDeg,
    holdMs: m.holdMs,
    complete: m.complete,
    flags,
    uncertaintyDeg: rangeUncertainty(exercise.angle, source, m.rangeDeg, noiseDeg),
    source,
  };
}

/** The source most of the repetition's frames lean on. */
function weakestSource(during: readonly (AngleInFrame | null)[]): AngleSource {
  const share = (s: AngleSource) => during.filter((f) => f?.source === s).length / Math.max(1, during.length);
  if (share('flow') >= 0.9) return 'flow';
  return share('landmarks') >= 0.5 ? 'landmarks' : 'fused';
}

/** Whether the knee bends during a movement by more than the limit, against how it usually lies in the set. */
function kneeBends(frames: readonly (AngleInFrame | null)[], tMs: readonly number[], m: FoundMovement): boolean {
  const usual = median(frames.flatMap((f) => (f ? [f.kneeDeg] : []))) ?? 0;
  const upper = frames.flatMap((f, i) => {
    const t = tMs[i] as number;
    return f && t >= m.startMs && t <= m.endMs ? [f.kneeDeg - usual] : [];
  });
  // A bend lasts; single frames of a lost shank do not count.
  const bent = upper.filter((d) => d > KNEE_LIMIT_DEG).length;
  return bent > 0.15 * upper.length;
}

/** The resting level that is taken off a lying leg's elevation, in the sense of the angle itself. */
function restLevel(
  exercise: Exercise,
  found: readonly FoundMovement[],
  smooth: readonly (number | null)[],
  sign: number,
): number {
  if (exercise.angle !== 'leg-elevation') return 0;
  const starts = found.map((m) => m.startDeg * sign);
  const level = median(starts.length > 0 ? starts : smooth.flatMap((v) => (v === null ? [] : [v * sign]))) ?? 0;
  return Math.abs(level) <= LEVEL_OFFSET_DEG ? level : 0;
}

/** Standard deviation of what changes from frame to frame faster than a joint can: each value against the mean of its neighbours. */
function noiseOf(frames: readonly (AngleInFrame | null)[]): number {
  const steps: number[] = [];
  for (let i = 1; i + 1 < frames.length; i++) {
    const [a, b, c] = [frames[i - 1], frames[i], frames[i + 1]];
    if (a && b && c) steps.push(Math.abs(b.deg - (a.deg + c.deg) / 2));
  }
  // Median of |x - mean of neighbours| for white noise: 0.6745 * sqrt(3/2) standard deviations.
  return (median(steps) ?? 0) / 0.826;
}
