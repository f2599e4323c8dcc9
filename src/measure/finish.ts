import type { Facing } from '../angles/joint-angle.ts';
import type { PictureSize } from '../capture/frame.ts';
import type { Exercise } from '../exercises/exercise.ts';
import type { Side } from '../pose/landmarks.ts';
import { median } from '../signal/median.ts';
import { type Deg, deg, type Ms, ms } from '../units.ts';
import { type AngleInFrame, angleSeries, usualFacing } from './angle-series.ts';
import { cameraTurn, isTooTurned } from './camera-turn.ts';
import { countedMovements } from './counted-movements.ts';
import { footAt } from './foot-position.ts';
import { footView } from './foot-view.ts';
import { glideResult } from './glide-result.ts';
import { withoutGlimpses } from './glimpses.ts';
import { KNEE_LIMIT_DEG } from './knee-limit.ts';
import { farShare, readLeg, strayShare } from './leg-reading.ts';
import type { LegSample } from './leg-sample.ts';
import { fromFloor, levelled } from './levelled.ts';
import { measuredReps } from './measured-rep.ts';
import type { Movements } from './movements.ts';
import { heedOnset, onsetIn } from './onset.ts';
import { otherLegUp } from './other-legs-points.ts';
import { qualityOf } from './quality.ts';
import { readyIndex, restBeforeReady } from './ready.ts';
import type { GlideStop, MeasuredRep, SetResult } from './set-result.ts';
import { squared } from './squared.ts';
import { steadied } from './steadied.ts';

/** What the measurement must know of a set. */
export interface SetSpec {
  readonly exercise: Exercise;
  /** Given: by stickers; left out: by the pose model. */
  readonly seenBy?: 'stickers';
  readonly side: Side;
  readonly size: PictureSize;
  /** After how many complete repetitions the set is done; null: open-ended. */
  readonly targetReps: number | null;
  /** Whether it ends by itself, once the dose is done or the person has left: a live one does; a file is watched to its end. */
  readonly endsItself: boolean;
  /** Posture and view must have been right for this long before movements count; left out: they need only be so while the leg is still. */
  readonly placedMs?: Ms;
  /** Leg raise: the therapist's limit for the knee's bend beyond how it lies at rest; without it `KNEE_LIMIT_DEG`. */
  readonly kneeLimitDeg?: Deg;
  /** Nerve glide: the leg's elevation at which symptoms begin, as marked; without it the leg is to stay where it was held when the set began. */
  readonly elevationLimitDeg?: Deg;
}

/** In more than this share of the frames the leg asked for is the one turned away: nothing is measured. Chosen. */
const FAR_SHARE = 0.5;

/** Beside a leg that is held up the camera's turn is known too roughly for less, deg. Chosen: up to there a picture shortens by under 4 %. */
const HELD_SQUARED_FROM_DEG = 15;

/** What was noted while the set ran. */
export interface SetNotes {
  /** When the set was found ready; null: never. */
  readonly foundReadyMs: Ms | null;
  /** When symptoms were said to begin; null: not. */
  readonly onsetMs: Ms | null;
  /** Why a set of glides was ended early; null, or left out: it was not. */
  readonly stopped?: GlideStop | null;
}

/**
 * Measures a whole set from its samples: both sources joined, smoothed without lag, parted into repetitions.
 */
export function measureSamples(
  spec: SetSpec,
  samples: readonly LegSample[],
  { foundReadyMs, onsetMs, stopped }: SetNotes,
): SetResult {
  const { exercise } = spec;
  const reading = readLeg(samples, exercise.segments);
  const far = farShare(samples) > FAR_SHARE;
  const otherUp = (exercise.heldLeg ?? false) && otherLegUp(samples);
  const tMs = samples.map((s) => s.tMs);
  const series = far || otherUp ? samples.map(() => null) : angleSeries(samples, exercise, reading, foundReadyMs);
  const seen = exercise.heldLeg ? withoutGlimpses(series, tMs, exercise.rule) : series;
  const angles = series.map((f) => f?.deg ?? null);
  const found = readyIndex(tMs, angles, exercise.rule, foundReadyMs);
  // A file may be cut tight, and a foot in the air is often not found still before its motion is followed.
  const early = exercise.heldLeg && !spec.endsItself ? readyIndex(tMs, steadied(tMs, angles), exercise.rule, null) : null;
  const ready = early === null || found === null ? found : Math.min(early, found);
  // A foot whose motion is followed late is found still when its first movement is under way: that begins from the stillness before.
  const from = exercise.heldLeg && ready !== null ? restBeforeReady(tMs, angles, exercise.rule, ready) : ready;
  const moved = (frames: readonly (AngleInFrame | null)[]) =>
    countedMovements(
      frames.map((measured, i) => ({ tMs: ms(tMs[i] as number), measured })),
      exercise,
      from,
      angles,
    );
  const lyingLeg = exercise.angle === 'leg-elevation';
  const rough = moved(seen);
  const turn = cameraTurn(restOf(samples, seen, rough), exercise.posture);
  const facing = usualFacing(samples, exercise);
  const footViewDeg = exercise.heldLeg ? footView(samples, spec.size, facing, turn) : null;
  const { frames, movements } = corrected({ exercise, facing, turn, footViewDeg }, seen, rough, moved);
  const sign = exercise.rule.direction === 'rises' ? 1 : -1;
  const angleDeg = movements.smooth.map((v) => (v === null ? null : deg(v * sign)));
  const onset = onsetIn(onsetMs, { tMs, angleDeg, sign, noticeDeg: exercise.rule.noticeDeg });
  const kneeLimitDeg = lyingLeg ? (spec.kneeLimitDeg ?? KNEE_LIMIT_DEG) : null;
  const reps = measuredReps(movements.found, {
    exercise,
    frames,
    tMs,
    noiseDeg: movements.noiseDeg,
    cameraTurnDeg: turn,
    segmentsPx: exercise.segments.map((s) => reading.usualPx[s]),
    stray: reading.stray,
    angleDeg: movements.smooth,
    kneeLimitDeg,
    footAt: (peakMs) => (lyingLeg ? footAt(samples, peakMs, facing, spec.size) : null),
  }).map((rep) => heedOnset(rep, onset, sign));
  const complete = reps.filter((r) => r.complete);
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
    kneeLimitDeg,
    onset,
    glide:
      exercise.id === 'nerve-glide'
        ? glideResult({
            samples,
            frames,
            from,
            facing,
            markedLimitDeg: spec.elevationLimitDeg ?? null,
            stopped: stopped ?? null,
          })
        : null,
    quality: qualityOf(samples, frames, exercise, {
      size: spec.size,
      from: from ?? 0,
      cameraTurnDeg: turn,
      far,
      otherUp,
      strayShare: strayShare(samples, reading),
    }),
    curve: { tMs, angleDeg },
  };
}

/** The samples in which the person had taken their place and rested. */
function restOf(
  samples: readonly LegSample[],
  seen: readonly (AngleInFrame | null)[],
  { found }: Movements,
): readonly LegSample[] {
  const placed = samples.filter((_, i) => seen[i] !== null);
  // Both are in order of time: one walk through them, however long the set.
  let next = 0;
  let movingUntilMs = Number.NEGATIVE_INFINITY;
  const resting = placed.filter(({ tMs }) => {
    for (let m = found[next]; m && m.startMs <= tMs; m = found[++next]) movingUntilMs = Math.max(movingUntilMs, m.endMs);
    return tMs > movingUntilMs;
  });
  return resting.length > 0 ? resting : placed;
}

interface Corrected {
  readonly frames: readonly (AngleInFrame | null)[];
  readonly movements: Movements;
}

/** How the person is seen. */
interface Seen {
  readonly exercise: Exercise;
  readonly facing: Facing;
  /** The camera's; null when it could not be told. */
  readonly turn: Deg | null;
  /** How far off the side a held leg's foot is seen; null of another leg. */
  readonly footViewDeg: Deg | null;
}

/** The angles with what the view adds taken out; none at all where the view is too bad for that. */
function corrected(
  { exercise, facing, turn, footViewDeg }: Seen,
  seen: readonly (AngleInFrame | null)[],
  rough: Movements,
  found: (frames: readonly (AngleInFrame | null)[]) => Movements,
): Corrected {
  const again = (frames: readonly (AngleInFrame | null)[]): Corrected => ({ frames, movements: found(frames) });
  if (isTooTurned(turn)) return again(seen.map(() => null));
  if (exercise.angle === 'leg-elevation') return again(levelled(seen, exercise, rough, turn ?? deg(0)));
  if (exercise.angle === 'foot-elevation') return again(fromFloor(seen, exercise, rough));
  const square = exercise.heldLeg
    ? squared(seen, exercise, facing, footViewDeg, HELD_SQUARED_FROM_DEG)
    : squared(seen, exercise, facing, turn);
  return square ? again(square) : { frames: seen, movements: rough };
}

/** Medians over the complete repetitions; null without any. */
export function summaryOf(complete: readonly MeasuredRep[]): SetResult['summary'] {
  const middleOf = (pick: (r: MeasuredRep) => number): Deg => deg(median(complete.map(pick)) ?? 0);
  if (complete.length === 0) return null;
  return {
    medianPeakDeg: middleOf((r) => r.peakDeg),
    medianRangeDeg: middleOf((r) => r.rangeDeg),
    uncertaintyDeg: middleOf((r) => r.uncertaintyDeg),
  };
}
