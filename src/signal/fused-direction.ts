import type { SegmentTurn } from '../flow/leg-motion.ts';
import { type Deg, deg, unwrappedNear } from '../units.ts';
import { median, quantile } from './median.ts';

/** What is known of one segment in one frame. */
export interface DirectionClue {
  /** Direction seen by the landmarks, deg, any turn of 360; null when not seen. */
  readonly landmarkDeg: number | null;
  readonly turn: SegmentTurn | null;
}

/** A segment's direction in one frame and where it came from. */
export interface FusedDirection {
  readonly deg: Deg;
  /** Variance of the movement part, deg^2; a constant error of the level is not in it. */
  readonly variance: number;
  readonly source: 'flow' | 'landmarks';
}

/** Variance of a direction that only the landmarks tell, deg^2. From the clips: about 2 degrees of jitter after the model's own smoothing. */
const LANDMARK_VARIANCE = 4;
/** Least variance of a turn, deg^2: what an alignment scatters on a still limb beyond its own standard error. Chosen. */
const TURN_VARIANCE = 0.01;
/**
 * A turn further than this from what the landmarks say, once the usual difference of both is taken out, is a wrong match. The landmarks shrink a
 * weak foot's movement by up to three quarters (about 15 degrees on a full foot lift) and a leg's by a tenth; twice that.
 */
export const CREDIBLE_DEG = 30;
/** The rest part of an anchor's time: turns within this share of its range, and at least this much, from the anchor's own picture. */
const REST_SHARE = 0.15;
const REST_DEG = 1.5;

/**
 * Joins a segment's landmark directions and its turning in the picture, after the set: the turning gives the movement, the landmarks at rest the level.
 * Frames without a turn take the landmarks' direction, shifted by the median difference to the frames that have both.
 * @param clues one a frame, in order
 * @param credibleDeg how far a turn may be from what the landmarks say
 * @returns one a frame; null where nothing is known
 */
export function fuseDirections(
  clues: readonly DirectionClue[],
  credibleDeg: number = CREDIBLE_DEG,
): readonly (FusedDirection | null)[] {
  const seen = unwrapped(clues);
  const levels = levelsOf(clues, seen);
  let credible = true;
  const turned = clues.map(({ turn }, i) => {
    const level = turn && levels.get(turn.anchor);
    if (!turn || level === undefined || level === null) return null;
    const value = level + turn.turnDeg;
    const landmark = seen[i] ?? null;
    // Without landmarks what the last ones said of the match stands.
    if (landmark !== null) credible = Math.abs(landmark - value) <= credibleDeg;
    return credible ? value : null;
  });
  const gap = median(turned.flatMap((t, i) => (t === null || seen[i] == null ? [] : [t - (seen[i] as number)]))) ?? 0;
  return clues.map(({ turn }, i) => {
    const value = turned[i] ?? null;
    if (value !== null && turn) {
      return { deg: deg(value), variance: TURN_VARIANCE + turn.seDeg ** 2, source: 'flow' };
    }
    const landmark = seen[i] ?? null;
    return landmark === null ? null : { deg: deg(landmark + gap), variance: LANDMARK_VARIANCE, source: 'landmarks' };
  });
}

/** Landmark directions without jumps of 360. */
function unwrapped(clues: readonly DirectionClue[]): readonly (number | null)[] {
  let last: number | null = null;
  return clues.map(({ landmarkDeg }) => {
    if (landmarkDeg === null) return null;
    last = last === null ? landmarkDeg : unwrappedNear(landmarkDeg, last);
    return last;
  });
}

/** For each anchor: the direction at turn 0, from the landmarks while the segment rested. */
function levelsOf(clues: readonly DirectionClue[], seen: readonly (number | null)[]): ReadonlyMap<number, number | null> {
  const byAnchor = new Map<number, { readonly turn: number; readonly landmark: number }[]>();
  clues.forEach(({ turn }, i) => {
    const landmark = seen[i] ?? null;
    if (!turn || landmark === null) return;
    const list = byAnchor.get(turn.anchor) ?? [];
    list.push({ turn: turn.turnDeg, landmark });
    byAnchor.set(turn.anchor, list);
  });
  return new Map([...byAnchor].map(([anchor, pairs]) => [anchor, levelOf(pairs)]));
}

function levelOf(pairs: readonly { readonly turn: number; readonly landmark: number }[]): number | null {
  const turns = pairs.map((p) => p.turn);
  const range = (quantile(turns, 0.98) ?? 0) - (quantile(turns, 0.02) ?? 0);
  const near = Math.max(REST_DEG, REST_SHARE * range);
  const atRest = pairs.filter((p) => Math.abs(p.turn) <= near);
  return median((atRest.length > 0 ? atRest : pairs).map((p) => p.landmark - p.turn));
}
