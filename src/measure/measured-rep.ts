import type { Exercise } from '../exercises/exercise.ts';
import type { FoundMovement } from '../reps/segment-set.ts';
import { standTime } from '../reps/stand-time.ts';
import { median } from '../signal/median.ts';
import { type Deg, deg, type Ms, ms } from '../units.ts';
import type { AngleInFrame } from './angle-series.ts';
import { firstAtLeast } from './first-at-least.ts';
import { FOOT_UNCERTAINTY_DEG } from './foot-position.ts';
import { repOf } from './rep-of.ts';
import { restClosure } from './rest-closure.ts';
import type { AngleSource, MeasuredRep, RepFlag } from './set-result.ts';

/** A bend lasts for at least this share of the movement; single frames of a lost shank do not count. Chosen. */
const KNEE_SHARE = 0.15;
/** Points that are not the leg's in more than this share of a movement's frames leave it in doubt. Chosen. */
const DOUBTFUL_SHARE = 0.25;
/** Told by the picture's motion in this share of its frames, a range is the picture's; by the landmarks in that one, theirs. Chosen. */
const FLOW_SHARE = 0.9;
const LANDMARKS_SHARE = 0.5;

/** What a repetition is made from besides its movement. */
export interface RepContext {
  readonly exercise: Exercise;
  readonly tMs: readonly number[];
  /** One a frame, same length as `tMs`. */
  readonly frames: readonly (AngleInFrame | null)[];
  readonly noiseDeg: number;
  readonly cameraTurnDeg: Deg | null;
  /** How long the segments that make the angle usually are in the picture, px. */
  readonly segmentsPx: readonly number[];
  /** The smoothed angle, positive in the exercise's direction; one a frame. */
  readonly angleDeg: readonly (number | null)[];
  /** One a frame: whether its points are not to be believed. */
  readonly stray: readonly boolean[];
  /** A leg raised with the knee bent further than at rest by this much is flagged; null: none is. */
  readonly kneeLimitDeg: Deg | null;
  /** Where the foot stood at a time; null when that was not seen or plays no part. */
  readonly footAt: (peakMs: Ms) => Deg | null;
}

/** The movements of a set as repetitions, numbered in order of time. */
export function measuredReps(found: readonly FoundMovement[], context: RepContext): readonly MeasuredRep[] {
  const frames = found.map((m) => framesOf(m, context));
  const { kneeLimitDeg } = context;
  const restingKnee = kneeLimitDeg === null ? null : kneeAtRest(frames, context);
  return found.map((m, i) => {
    const { exercise, noiseDeg, cameraTurnDeg, segmentsPx } = context;
    const span = frames[i] as Span;
    const { during } = span;
    const source = sourceOf(during);
    const flags: RepFlag[] = [];
    if (!m.complete) flags.push('partial');
    if (m.cut) flags.push(whyCut(m, context.tMs));
    if (isDoubtful(span, context)) flags.push('doubtful');
    if (kneeLimitDeg !== null && restingKnee !== null && kneeBends(during, restingKnee + kneeLimitDeg)) flags.push('knee-bent');
    const standing = standOf(m, span, context);
    if (standing.sankAfterMs !== null) flags.push('sinking');
    const footDeg = context.footAt(m.peakMs);
    const foot = { footDeg, footUncertaintyDeg: footDeg === null ? null : FOOT_UNCERTAINTY_DEG };
    const matchDeg = source === 'landmarks' ? 0 : matchError(m, span, context);
    const closureDeg = restClosure(m, found, context.tMs, context.frames);
    const facts = { number: i + 1, flags, source, noiseDeg, matchDeg, closureDeg, segmentsPx, cameraTurnDeg };
    return { ...repOf(m, exercise, facts), ...foot, ...standing };
  });
}

/** Why a movement was not seen whole. @param tMs one a frame of the set */
export const whyCut = ({ returned, endMs }: FoundMovement, tMs: readonly number[]): 'unfinished' | 'tracking-gap' =>
  !returned && endMs === tMs.at(-1) ? 'unfinished' : 'tracking-gap';

/** How long a heel stand lasted, and when it sank. */
function standOf(
  { startDeg }: FoundMovement,
  { from, to }: Span,
  { exercise, tMs, angleDeg }: RepContext,
): Pick<MeasuredRep, 'upMs' | 'sankAfterMs'> {
  if (exercise.id !== 'heel-stand') return { upMs: null, sankAfterMs: null };
  const samples = angleDeg
    .slice(from, to)
    .map((angle, i) => ({ tMs: ms(tMs[from + i] as number), deg: angle === null ? null : deg(angle) }));
  return standTime(samples, startDeg, exercise.rule.leastDeg) ?? { upMs: ms(0), sankAfterMs: null };
}

/** Whether too many of its frames show points that are not the leg's. */
const isDoubtful = ({ from, to }: Span, { stray }: RepContext): boolean =>
  stray.slice(from, to).filter(Boolean).length > DOUBTFUL_SHARE * (to - from);

interface Span {
  readonly from: number;
  readonly to: number;
  readonly during: readonly (AngleInFrame | null)[];
}

function framesOf({ startMs, endMs }: FoundMovement, { tMs, frames }: RepContext): Span {
  const from = indexAt(tMs, startMs);
  const after = indexAt(tMs, endMs);
  const to = tMs[after] === endMs ? after + 1 : after;
  return { from, to, during: frames.slice(from, to) };
}

const indexAt = (tMs: readonly number[], t: number): number => firstAtLeast(tMs, t, (each) => each);

/** Standard error of the matches at the start and at the peak together, deg. */
function matchError({ peakMs }: FoundMovement, { from, during }: Span, { tMs }: RepContext): number {
  const peak = during[indexAt(tMs, peakMs) - from];
  const start = during.find((f) => f !== null);
  return Math.sqrt((peak?.variance ?? 0) + (start?.variance ?? 0));
}

/** The source most of the repetition's frames lean on. */
function sourceOf(during: readonly (AngleInFrame | null)[]): AngleSource {
  const share = (s: AngleSource) => during.filter((f) => f?.source === s).length / Math.max(1, during.length);
  if (share('flow') >= FLOW_SHARE) return 'flow';
  return share('landmarks') >= LANDMARKS_SHARE ? 'landmarks' : 'fused';
}

const kneesOf = (frames: readonly (AngleInFrame | null)[]): readonly number[] => frames.flatMap((f) => f?.kneeDeg ?? []);

/** How the knee lies between the movements; over all frames when there is nothing between them; null when it was never seen. */
function kneeAtRest(movements: readonly Span[], { frames }: RepContext): number | null {
  const ends = [0, ...movements.map((m) => m.to)];
  const starts = [...movements.map((m) => m.from), frames.length];
  const resting = ends.flatMap((end, i) => kneesOf(frames.slice(end, starts[i])));
  return median(resting) ?? median(kneesOf(frames));
}

/** Whether the knee bends during a movement beyond `mostDeg` for long enough. */
function kneeBends(during: readonly (AngleInFrame | null)[], mostDeg: number): boolean {
  const knees = kneesOf(during);
  return knees.filter((knee) => knee > mostDeg).length > KNEE_SHARE * knees.length;
}
