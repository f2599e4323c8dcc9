import type { Facing } from '../angles/joint-angle.ts';
import type { Exercise } from '../exercises/exercise.ts';
import type { FoundMovement } from '../reps/segment-set.ts';
import { median, quantile } from '../signal/median.ts';
import { noiseLevel } from '../signal/noise-level.ts';
import { deg, type Ms, ms } from '../units.ts';
import { countedMovements } from './counted-movements.ts';
import { type SetNotes, type SetSpec, summaryOf } from './finish.ts';
import { fittedPeak } from './fitted-peak.ts';
import { fittedRest } from './fitted-rest.ts';
import { whyCut } from './measured-rep.ts';
import type { Movements, RawAngle } from './movements.ts';
import { heedOnset, onsetIn } from './onset.ts';
import { readyIndex } from './ready.ts';
import { repOf } from './rep-of.ts';
import type { MeasuredRep, RepFlag, SetResult } from './set-result.ts';
import { facingOfStickers, type StickerAngle, stickerAngle } from './sticker-angle.ts';
import { stickerWarnings } from './sticker-quality.ts';
import type { StickersSeen } from './stickers-seen.ts';
import { toesAlong } from './toes-along.ts';

/** What a set by stickers keeps of a frame. */
export interface StickerSample {
  readonly tMs: Ms;
  readonly stickers: StickersSeen | null;
}

/** Not seen, or guessed at, in more than this share of a movement's frames: it is in doubt. Chosen, as for points that are not the leg's. */
const DOUBTFUL_SHARE = 0.25;
/** This share of the angles lies at or below the rest, where no movement tells it. Chosen. */
const RESTING_SHARE = 0.1;

/** Measures a whole set from its stickers: smoothed without lag, parted into repetitions, counted from rest. */
export function measureStickers(spec: SetSpec, samples: readonly StickerSample[], notes: SetNotes): SetResult {
  const { exercise } = spec;
  const { rule } = exercise;
  const facing = usualFacing(samples, exercise);
  const frames = samples.map(({ stickers }) => believed(stickerAngle(stickers, exercise.angle, facing), exercise));
  const tMs = samples.map((s) => s.tMs);
  const raw = frames.map((f) => f?.deg ?? null);
  const from = readyIndex(tMs, raw, rule, notes.foundReadyMs);
  const sign = rule.direction === 'rises' ? 1 : -1;
  const series = trusted(frames, tMs);
  const turned = series.map(({ measured, ...at }) => ({
    ...at,
    measured: measured && { ...measured, deg: sign * measured.deg },
  }));
  const movements = fromRest(fitted(countedMovements(series, exercise, from, raw), turned));
  const angleDeg = movements.smooth.map((v) => (v === null ? null : deg(v * sign)));
  const onset = onsetIn(notes.onsetMs, { tMs, angleDeg, sign, noticeDeg: rule.noticeDeg });
  const of: RepOf = { exercise, facing, samples, frames, noiseDeg: movements.noiseDeg };
  const reps = movements.found.map((m, i) => heedOnset(stickerRep(m, i + 1, of), onset, sign));
  const complete = reps.filter((r) => r.complete);
  return {
    exercise: exercise.id,
    side: spec.side,
    size: spec.size,
    frames: samples.length,
    framesUsed: frames.filter((f) => f !== null).length,
    durationMs: ms(samples.length > 1 ? (tMs.at(-1) as number) - (tMs[0] as number) : 0),
    reps,
    count: complete.length,
    partialCount: reps.length - complete.length,
    summary: summaryOf(complete),
    kneeLimitDeg: null,
    onset,
    glide: null,
    quality: {
      cameraTurnDeg: null,
      warnings: stickerWarnings(samples.slice(from ?? 0), frames.slice(from ?? 0), exercise.angle),
    },
    curve: { tMs, angleDeg },
  };
}

/** The angles as the smoother takes them: where they scatter by more than the centres' own errors say, as in a noisy picture, they are trusted less. */
function trusted(frames: readonly (StickerAngle | null)[], tMs: readonly Ms[]): readonly RawAngle[] {
  const noiseDeg = noiseLevel(frames.map((f) => f?.deg ?? null));
  const claimed = median(frames.flatMap((f) => (f ? [f.variance] : []))) ?? 1;
  const more = Math.max(1, noiseDeg ** 2 / claimed);
  return frames.map((f, i) => ({ tMs: tMs[i] as Ms, measured: f && { deg: f.deg, variance: more * f.variance } }));
}

/** Which way the toes point in most frames. */
function usualFacing(samples: readonly StickerSample[], { angle }: Exercise): Facing {
  const ways = samples.map(({ stickers }) => stickers && facingOfStickers(stickers, angle));
  return ways.filter((w) => w === 'left').length >= ways.filter((w) => w === 'right').length ? 'left' : 'right';
}

/** A place guessed at for so long that the guess could be a movement is none. */
const believed = (angle: StickerAngle | null, { rule }: Exercise): StickerAngle | null =>
  angle && Math.sqrt(angle.variance) < rule.noticeDeg ? angle : null;

/** Movements with peaks that noise has not raised, from rests that it has not lowered. */
const fitted = (movements: Movements, turned: readonly RawAngle[]): Movements => ({
  ...movements,
  found: movements.found.map((m, i) => {
    const peak = fittedPeak(turned, m, movements.noiseDeg) ?? m.peakDeg;
    const start = fittedRest(turned, m, movements.found[i - 1] ?? null) ?? m.startDeg;
    return {
      ...m,
      startDeg: deg(start),
      peakDeg: deg(peak),
      rangeDeg: deg(Math.max(0, m.rangeDeg + peak - m.peakDeg - (start - m.startDeg))),
    };
  }),
});

/** Where stickers lie on the skin, the line through them is bent at rest: that is zero. */
function fromRest({ found, smooth, noiseDeg }: Movements): Movements {
  const starts = found.filter((m) => !m.cut).map((m) => m.startDeg as number);
  const zero =
    median(starts) ??
    quantile(
      smooth.filter((v) => v !== null),
      RESTING_SHARE,
    ) ??
    0;
  return {
    found: found.map((m) => ({ ...m, startDeg: deg(m.startDeg - zero), peakDeg: deg(m.peakDeg - zero) })),
    smooth: smooth.map((v) => v && v - zero),
    noiseDeg,
  };
}

interface RepOf {
  readonly exercise: Exercise;
  readonly facing: Facing;
  readonly samples: readonly StickerSample[];
  /** One a sample. */
  readonly frames: readonly (StickerAngle | null)[];
  readonly noiseDeg: number;
}

function stickerRep(m: FoundMovement, number: number, { exercise, facing, samples, frames, noiseDeg }: RepOf): MeasuredRep {
  const during = frames.filter(
    (_, i) => (samples[i] as StickerSample).tMs >= m.startMs && (samples[i] as StickerSample).tMs <= m.endMs,
  );
  const guessed = samples.filter(
    ({ tMs, stickers }, i) => tMs >= m.startMs && tMs <= m.endMs && (!frames[i] || isGuessed(stickers)),
  );
  const flags: RepFlag[] = [];
  if (!m.complete) flags.push('partial');
  if (m.cut)
    flags.push(
      whyCut(
        m,
        samples.map((s) => s.tMs),
      ),
    );
  if (guessed.length > DOUBTFUL_SHARE * during.length) flags.push('doubtful');
  if (exercise.angle === 'great-toe-extension' && toesAlong(samples, m, facing)) flags.push('toes-along');
  const variances = during.flatMap((f) => (f ? [f.variance] : []));
  const lengths = (end: 0 | 1) => median(during.flatMap((f) => (f ? [f.lengthsPx[end]] : []))) ?? 1;
  return repOf(m, exercise, {
    number,
    flags,
    source: 'stickers',
    // The centres' errors hold the jitter; where it is larger than they say, it counts instead. At rest and at the peak.
    noiseDeg: 0,
    matchDeg: Math.SQRT2 * Math.max(noiseDeg, Math.sqrt(median(variances) ?? 0)),
    closureDeg: null,
    segmentsPx: [lengths(0), lengths(1)],
    cameraTurnDeg: null,
  });
}

const isGuessed = (seen: StickersSeen | null): boolean => Object.values(seen?.points ?? {}).some((p) => p?.bridged);
