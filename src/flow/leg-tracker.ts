import type { Landmark, Side } from '../pose/landmarks.ts';
import type { Ms } from '../units.ts';
import { type CameraMotion, cameraStep } from './camera-motion.ts';
import { boundsOf } from './capsule-mask.ts';
import type { Grey } from './grey.ts';
import type { LegMotion, Segment, SegmentTurn } from './leg-motion.ts';
import { type Place, pointAfter } from './place.ts';
import { buildPyramid } from './pyramid.ts';
import { MARGIN_PX, RestWatch } from './rest-picture.ts';
import { LEVELS } from './segment-anchor.ts';
import type { ExpectedJoint } from './segment-hints.ts';
import { type Point, type SegmentShape, segmentShape } from './segment-shape.ts';
import { SegmentTracker } from './segment-tracker.ts';
import { type Sight, sightOf } from './sight.ts';

/** A segment not found for this long is taken up anew at its next rest, unless its old pictures show it again before. Chosen: longer than a hand passing by. */
const LOST_MS = 700;

/** A segment found no better than this for this long looks different by now (another seat, another light) and is taken up anew at its next rest. Chosen. */
const POOR_ZNCC = 0.8;
const POOR_MS = 1000;

const FROM_HIP: readonly Segment[] = ['thigh', 'shank', 'foot'];

interface Followed {
  tracker: SegmentTracker | null;
  /** Counts the rest pictures taken. */
  anchor: number;
  foundMs: number;
  /** When it was last found well. */
  wellMs: number;
  watch: RestWatch | null;
  /** Where the joint and the neighbour that carries it were when the two were last seen together for the first time. */
  readonly held: boolean;
  hung: { readonly carrier: SegmentTracker; readonly joint: Point; readonly at: Place } | null;
}

/** Follows the turning of the near leg's segments through a set. Feed it every frame in order. */
export interface LegTracker {
  /**
   * @param picture brightness of the upright frame
   * @param landmarks px of that frame, or null when the pose model did not see this frame; the picture alone is followed then
   * @param camera where the camera has gone, so that a leg is looked for where the picture has taken it
   */
  readonly observe: (picture: Grey, landmarks: readonly Landmark[] | null, tMs: Ms, camera?: CameraMotion) => LegMotion;
}

/**
 * A tracker of `segments` of the near leg; the others come back as null.
 * @param held whether the leg is held still beside the other one, so that a sure match outweighs landmarks that have gone over to that one
 */
export function startLegTracker(segments: readonly Segment[], side: Side, held = false): LegTracker {
  const followed = new Map<Segment, Followed>(
    segments.map((s) => [
      s,
      { tracker: null, anchor: 0, foundMs: Number.NEGATIVE_INFINITY, wellMs: 0, watch: null, held, hung: null },
    ]),
  );
  let before: CameraMotion | null = null;
  return {
    observe(picture, landmarks, tMs, camera) {
      const step = camera && before && cameraStep(before, camera, picture);
      if (step) for (const { tracker } of followed.values()) tracker?.carry(step);
      before = camera ?? before;
      const motion: Record<Segment, SegmentTurn | null> = { foot: null, shank: null, thigh: null };
      // From the hip outwards: each segment carries the next one along.
      let carrier: SegmentTracker | null = null;
      for (const segment of FROM_HIP) {
        const state = followed.get(segment);
        if (!state) continue;
        const seen = landmarks ? segmentShape(segment, landmarks, side) : null;
        motion[segment] = follow(state, picture, seen, carrier, tMs);
        carrier = motion[segment] ? state.tracker : null;
      }
      return motion;
    },
  };
}

function follow(
  state: Followed,
  picture: Grey,
  seen: SegmentShape | null,
  carrier: SegmentTracker | null,
  tMs: Ms,
): SegmentTurn | null {
  const { tracker } = state;
  const sight = tracker && sightOf(picture, boundsOf(tracker.outline(tMs, seen), MARGIN_PX), LEVELS);
  if (tracker && sight) {
    const carrierTurn = carrier?.step ? carrier.step.to.turnDeg - carrier.step.from.turnDeg : null;
    const hints = { seen, joint: expectedJoint(state, seen, carrier), carrierTurnDeg: carrierTurn };
    const sighting = tracker.find(sight, tMs, hints);
    if (sighting) {
      if (carrier && state.hung?.carrier !== carrier) hang(state, tracker, carrier);
      state.foundMs = tMs;
      if (sighting.zncc >= POOR_ZNCC) state.wellMs = tMs;
      const anew = seen && tMs - state.wellMs > POOR_MS ? takeRest(state, picture, seen, carrier, tMs) : null;
      if (state.wellMs === tMs) state.watch = null;
      return anew ?? { ...sighting, anchor: state.anchor };
    }
  }
  if (!seen || tMs - state.foundMs <= LOST_MS) return null;
  return takeRest(state, picture, seen, carrier, tMs);
}

function hang(state: Followed, tracker: SegmentTracker, carrier: SegmentTracker): void {
  const joint = pointAfter(tracker.rest.joint, { from: tracker.first, to: tracker.place });
  state.hung = { carrier, joint, at: carrier.place };
}

function expectedJoint(state: Followed, seen: SegmentShape | null, carrier: SegmentTracker | null): ExpectedJoint | null {
  if (carrier && state.hung?.carrier === carrier) {
    return { ...pointAfter(state.hung.joint, { from: state.hung.at, to: carrier.place }), sure: true };
  }
  return seen && { x: seen.joint.x, y: seen.joint.y, sure: false };
}

/** Takes a new rest picture once the segment holds still; the turn goes on from where the landmarks see it. */
function takeRest(
  state: Followed,
  picture: Grey,
  seen: SegmentShape,
  carrier: SegmentTracker | null,
  tMs: Ms,
): SegmentTurn | null {
  state.watch ??= new RestWatch(tMs, state.held);
  const rest = state.watch.look(picture, seen, tMs);
  if (!rest) return null;
  state.watch = null;
  const sight: Sight = { frame: picture, crop: rest.crop, pyramid: buildPyramid(rest.crop, LEVELS) };
  const tracker = SegmentTracker.start(
    sight,
    rest.shape,
    { baseDeg: state.tracker?.turnSeen(rest.shape) ?? 0, held: state.held },
    tMs,
  );
  if (!tracker) return null;
  state.tracker = tracker;
  state.anchor += 1;
  state.foundMs = tMs;
  state.wellMs = tMs;
  state.hung = null;
  if (carrier) hang(state, tracker, carrier);
  const hints = { seen: rest.shape, joint: expectedJoint(state, rest.shape, carrier), carrierTurnDeg: null };
  const sighting = tracker.find(sight, tMs, hints);
  return sighting && { ...sighting, anchor: state.anchor };
}
