import type { FrameTaken } from '../capture/between-frames.ts';
import type { CameraMotion } from '../flow/camera-motion.ts';
import { type LegMotion, SEGMENTS, type Segment, type SegmentTurn } from '../flow/leg-motion.ts';
import type { Observation } from '../measure/observation.ts';
import { deg, px, ratio } from '../units.ts';
import type { FrameObserver } from './session.ts';

/** How often in one set whoever looks at the pictures is started anew. One that fails more often fails always. Chosen. */
const MOST_RENEWALS = 3;

export interface RenewalNeeds {
  /** Starts another in place of the failed one; null: there is none to be had. */
  readonly renew: () => Promise<FrameObserver | null>;
  /** True when it has failed and is being started anew, false when it looks at pictures again. */
  readonly onRenewing: (renewing: boolean) => void;
}

/** What was seen of a picture that was lost with whoever looked at it. */
const unseen = ({ tMs }: FrameTaken): Observation => ({ tMs, landmarks: null, motion: null, camera: null, brightness: null });

/** The observations of one after the other as of one: what turns and moves since the beginning goes on from where the one before was. */
function joiner(): { readonly join: (seen: Observation) => Observation; readonly next: () => void } {
  let newestAnchor = 0;
  let anchorsBefore = 0;
  let last: CameraMotion | null = null;
  let base: CameraMotion | null = null;
  const anchored = (turn: SegmentTurn | null): SegmentTurn | null => {
    if (!turn) return null;
    // Turns of another's anchors do not compare: none may have the same number.
    const anchor = turn.anchor + anchorsBefore;
    newestAnchor = Math.max(newestAnchor, anchor);
    return { ...turn, anchor };
  };
  const motionOf = (motion: LegMotion): LegMotion =>
    Object.fromEntries(SEGMENTS.map((s): [Segment, SegmentTurn | null] => [s, anchored(motion[s])])) as Record<
      Segment,
      SegmentTurn | null
    >;
  /** Shifts are added as if the camera had not turned in between: they only tell that it has moved. */
  const cameraOf = (camera: CameraMotion): CameraMotion =>
    base
      ? {
          ...camera,
          rotationDeg: deg(base.rotationDeg + camera.rotationDeg),
          shiftX: px(base.shiftX + camera.shiftX),
          shiftY: px(base.shiftY + camera.shiftY),
          scale: ratio(base.scale * camera.scale),
        }
      : camera;
  return {
    join(seen) {
      const camera = seen.camera && cameraOf(seen.camera);
      last = camera ?? last;
      return { ...seen, motion: seen.motion && motionOf(seen.motion), camera };
    },
    next() {
      anchorsBefore = newestAnchor;
      base = last;
    },
  };
}

/**
 * Looks at a set's pictures and survives the end of whoever does it: a worker that crashes, runs out of memory or falls silent. What was in its hands then is as a picture in
 * which nobody was seen, so that no movement is counted that was not looked at.
 */
export function renewedObserver(first: FrameObserver, { renew, onRenewing }: RenewalNeeds): FrameObserver {
  const { join, next } = joiner();
  let observer = first;
  let spec: Parameters<FrameObserver['begin']>[0] | null = null;
  let left = MOST_RENEWALS;
  let renewing: Promise<void> | null = null;

  const takeAnother = async (cause: unknown): Promise<void> => {
    if (left > 0) onRenewing(true);
    while (left > 0 && spec) {
      left -= 1;
      const other = await renew();
      if (!other) break;
      try {
        await other.begin(spec);
        observer = other;
        next();
        onRenewing(false);
        return;
      } catch {
        // The next one may do.
      }
    }
    throw cause;
  };
  const asked = async <T>(ask: (of: FrameObserver) => Promise<T>, lost: T): Promise<T> => {
    await renewing;
    const mine = observer;
    try {
      return await ask(mine);
    } catch (cause) {
      // Two questions of one picture fail together.
      if (mine === observer) {
        renewing ??= takeAnother(cause).finally(() => {
          renewing = null;
        });
        await renewing;
      }
      return lost;
    }
  };
  return {
    begin(given) {
      spec = given;
      return asked((of) => of.begin(given), undefined);
    },
    follow: async (between) => (await asked((of) => of.follow(between), [])).map(join),
    observe: async (frame) => join(await asked((of) => of.observe(frame), unseen(frame))),
  };
}
