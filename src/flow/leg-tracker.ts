import type { Landmark, Side } from '../pose/landmarks.ts';
import type { Ms } from '../units.ts';
import { boundsOf } from './capsule-mask.ts';
import { cropOf, type Grey } from './grey.ts';
import type { LegMotion, Segment, SegmentTurn } from './leg-motion.ts';
import { buildPyramid } from './pyramid.ts';
import { type SegmentShape, segmentShape, shapeDirection, shapeLength } from './segment-shape.ts';
import { LEVELS, SegmentTracker, type Step } from './segment-tracker.ts';

/** A segment must hold still for this long before its picture becomes the rest picture. Chosen. */
export const STILL_MS = 300;
/** Still: the landmarks moved by less than this share of the segment's length and turned by less than this. Chosen above their jitter. */
const STILL_SHARE = 0.06;
const STILL_DEG = 5;
/** Where nobody holds still, the picture after this time serves. Chosen. */
const PATIENCE_MS = 2500;
/** A segment not found for this long is taken up anew at its next rest. Chosen: longer than a hand passing by. */
export const LOST_MS = 700;
/** Room around the segment in the crop, px: the aligner's reach and the coarsest level's filter. */
const MARGIN_PX = 20;

const FROM_HIP: readonly Segment[] = ['thigh', 'shank', 'foot'];

interface Followed {
  tracker: SegmentTracker | null;
  /** Counts the rest pictures taken. */
  anchor: number;
  foundMs: number;
  /** Landmark shapes of the last STILL_MS. */
  recent: { readonly tMs: number; readonly shape: SegmentShape }[];
  waitingSinceMs: number | null;
}

/** Follows the turning of the near leg's segments through a set. Feed it every frame in order. */
export interface LegTracker {
  /**
   * @param picture brightness of the upright frame
   * @param landmarks px of that frame, or null when the pose model did not see this frame; the picture alone is followed then
   */
  readonly observe: (picture: Grey, landmarks: readonly Landmark[] | null, tMs: Ms) => LegMotion;
}

/** A tracker of `segments` of the near leg; the others come back as null. */
export function startLegTracker(segments: readonly Segment[], side: Side): LegTracker {
  const followed = new Map<Segment, Followed>(
    segments.map((s) => [s, { tracker: null, anchor: 0, foundMs: 0, recent: [], waitingSinceMs: null }]),
  );
  return {
    observe(picture, landmarks, tMs) {
      const motion: Record<Segment, SegmentTurn | null> = { foot: null, shank: null, thigh: null };
      // From the hip outwards: each segment carries the next one along.
      let carrier: Step | null = null;
      for (const segment of FROM_HIP) {
        const state = followed.get(segment);
        if (!state) continue;
        const seen = landmarks ? segmentShape(segment, landmarks, side) : null;
        motion[segment] = follow(state, picture, seen, carrier, tMs);
        carrier = motion[segment] ? (state.tracker?.step ?? null) : null;
      }
      return motion;
    },
  };
}

function follow(state: Followed, picture: Grey, seen: SegmentShape | null, carrier: Step | null, tMs: Ms): SegmentTurn | null {
  if (seen) remember(state, seen, tMs);
  if (!state.tracker) {
    if (!seen || !readyForRest(state, tMs)) return null;
    return takeRest(state, picture, seen, tMs);
  }
  const crop = cropOf(picture, boundsOf(state.tracker.outline(tMs, seen), MARGIN_PX));
  const sighting = crop && state.tracker.find(buildPyramid(crop, LEVELS), crop, tMs, seen, carrier);
  if (sighting) {
    state.foundMs = tMs;
    return { ...sighting, anchor: state.anchor };
  }
  if (tMs - state.foundMs > LOST_MS) {
    state.tracker = null;
    state.waitingSinceMs = null;
  }
  return null;
}

function takeRest(state: Followed, picture: Grey, seen: SegmentShape, tMs: Ms): SegmentTurn | null {
  const crop = cropOf(picture, boundsOf(seen.outline, MARGIN_PX));
  state.tracker = crop ? SegmentTracker.start(crop, seen, tMs) : null;
  if (!state.tracker || !crop) return null;
  state.anchor += 1;
  state.foundMs = tMs;
  const sighting = state.tracker.find(buildPyramid(crop, LEVELS), crop, tMs, seen, null);
  return sighting && { ...sighting, anchor: state.anchor };
}

function remember(state: Followed, shape: SegmentShape, tMs: number): void {
  state.waitingSinceMs ??= tMs;
  state.recent.push({ tMs, shape });
  const from = state.recent.findIndex((r) => tMs - r.tMs <= STILL_MS);
  if (from > 0) state.recent.splice(0, from);
}

/** Whether the landmarks have hardly moved over STILL_MS, or nobody has held still for PATIENCE_MS. */
function readyForRest(state: Followed, tMs: Ms): boolean {
  const newest = state.recent[state.recent.length - 1];
  const oldest = state.recent[0];
  if (!newest || !oldest) return false;
  const waited = tMs - (state.waitingSinceMs ?? tMs);
  if (waited >= PATIENCE_MS) return true;
  // The window holds frames of the last STILL_MS, so it is full only when something older has left it.
  if (waited < STILL_MS) return false;
  const length = shapeLength(newest.shape);
  return state.recent.every(({ shape }) => {
    const moved = Math.max(
      Math.hypot(shape.from.x - newest.shape.from.x, shape.from.y - newest.shape.from.y),
      Math.hypot(shape.to.x - newest.shape.to.x, shape.to.y - newest.shape.to.y),
    );
    const turned = Math.abs(shapeDirection(shape) - shapeDirection(newest.shape)) * (180 / Math.PI);
    return moved < STILL_SHARE * length && Math.min(turned, 360 - turned) < STILL_DEG;
  });
}
