import type { Landmark } from '../pose/landmarks.ts';
import { type Deg, type Ms, type Px, px, type Ratio, ratio } from '../units.ts';
import { Background } from './background.ts';
import type { Grey } from './grey.ts';
import { type PersonHull, personHull } from './person-hull.ts';
import { aboutPivot, composed, inverse, type PlaneMotion, still } from './plane-motion.ts';
import { buildPyramid } from './pyramid.ts';
import { enlargedMotion, reducedPicture, reducedPlace } from './reduced-picture.ts';

/** How the picture of the room has moved since the first frame because the camera has, and how far that is to be trusted. */
export interface CameraMotion {
  /** Clockwise on the screen is positive: the room turns so when the camera turns the other way. */
  readonly rotationDeg: Deg;
  /** Where the picture's middle has gone. */
  readonly shiftX: Px;
  readonly shiftY: Px;
  readonly scale: Ratio;
  /** Share of the background's points that agree; 0 when none could tell and the camera is taken to stand as it last stood. */
  readonly agreement: Ratio;
  /** How many points of the background were asked. */
  readonly points: number;
}

/** Watches whether the camera stays where it is. Feed it every frame in order. */
export interface CameraWatch {
  /**
   * @param picture brightness of the upright frame, always of one size
   * @param landmarks px of that frame, to leave the person out; null: the last known ones serve, and before there are any nothing is told
   */
  readonly observe: (picture: Grey, landmarks: readonly Landmark[] | null, tMs: Ms) => CameraMotion;
}

/** A step of the camera shorter than this needs no telling: a tracker reaches further. Chosen. */
const STEP_PX = 0.5;
const STEP_DEG = 0.1;

/** What the camera has done to the picture between two frames, px of the picture; null when next to nothing. */
export function cameraStep(
  before: CameraMotion,
  now: CameraMotion,
  { width, height }: { readonly width: number; readonly height: number },
): PlaneMotion | null {
  const middle = { pivotX: px((width - 1) / 2), pivotY: px((height - 1) / 2) };
  const step = composed(inverse({ ...before, ...middle }), { ...now, ...middle });
  return Math.hypot(step.shiftX, step.shiftY) < STEP_PX && Math.abs(step.rotationDeg) < STEP_DEG ? null : step;
}

const LEVELS = 3;
/** Moved by less than this since its reference picture a camera stands still, and exactly so. Chosen: far under what an angle's interval holds. */
const STILL_DEG = 0.2;
const STILL_PX = 1;
const STILL_SCALE = 0.005;
/** The same in standard errors of the rotation, for pictures that are dim and noisy. Chosen. */
const STILL_SIGMAS = 4;
/** A camera that has moved and then holds still for this long gets a new reference picture. Chosen. */
const SETTLED_MS = 500;
/** So far from its reference picture, or so changed in size, windows look different: a new one is taken at once. Chosen. */
const FAR_DEG = 2.5;
const FAR_SCALE = 0.1;
/** Nothing recognised for this long: the room itself looks different (a light, furniture) and is learnt anew, the camera taken to have stayed. Chosen. */
const BLIND_MS = 1500;
/** A background with few points left is learnt anew, but not more often than this. Chosen. */
const RELEARN_MS = 2000;

/** A camera that stands still is looked at no more often than this. Chosen: a jump is seen soon enough, and half of the time is saved. */
const GLANCE_MS = 60;
/** A room that did not tell is asked again after this. Chosen: a bare wall must not cost what a camera's jump does. */
const ASK_AGAIN_MS = 300;

/** Whether a motion is too small to be told from none. */
const isStill = (m: PlaneMotion, seDeg: number): boolean =>
  Math.abs(m.rotationDeg) <= Math.max(STILL_DEG, STILL_SIGMAS * seDeg) &&
  Math.hypot(m.shiftX, m.shiftY) <= STILL_PX &&
  Math.abs(m.scale - 1) <= STILL_SCALE;

/** A watch that begins with the next frame, whose place counts as none. */
export function startCameraWatch(): CameraWatch {
  /** The person as last known, from whichever frame: a frame that is looked at need not be one with landmarks. */
  let person: readonly Landmark[] | null = null;
  let hull: PersonHull | null = null;
  let background: Background | null = null;
  /** From the first frame to the reference picture, about the picture's middle; px of the full picture. */
  let base: PlaneMotion | null = null;
  /** From the reference picture to now. */
  let since: PlaneMotion | null = null;
  /** Where it last came to rest since the reference picture, and when. */
  let rested: { readonly at: PlaneMotion; readonly tMs: number } | null = null;
  let learntMs = 0;
  let seenMs = 0;
  let lookedMs = Number.NEGATIVE_INFINITY;
  let pauseMs = GLANCE_MS;
  let lastTold: CameraMotion | null = null;
  return {
    observe(picture, landmarks, tMs) {
      person = landmarks ?? person;
      const blank = background !== null && !background.tells && tMs - learntMs < RELEARN_MS;
      if (lastTold && background && (blank || (rested === null && tMs - lookedMs < pauseMs))) return lastTold;
      pauseMs = GLANCE_MS;
      lookedMs = tMs;
      const { image, factor } = reducedPicture(picture);
      const pyramid = buildPyramid(image, LEVELS);
      if (person) {
        hull = personHull(person.map((p) => ({ x: reducedPlace(p.x, factor), y: reducedPlace(p.y, factor) })));
      }
      const middle = { x: (picture.width - 1) / 2, y: (picture.height - 1) / 2 };
      const none = still(middle.x, middle.y);
      const learn = (from: PlaneMotion) => {
        background = new Background(pyramid, hull);
        base = from;
        since = none;
        rested = null;
        learntMs = tMs;
        seenMs = tMs;
      };
      const told = (agreement: number, points: number): CameraMotion => {
        const { rotationDeg, shiftX, shiftY, scale } = base && since ? composed(base, since) : none;
        lastTold = { rotationDeg, shiftX, shiftY, scale, agreement: ratio(agreement), points };
        return lastTold;
      };
      // Before anybody is known the person may be all there is to see: what moves then is not the room.
      if (!hull) return told(0, 0);
      if (!background || !base || !since) {
        learn(none);
        return told(0, 0);
      }
      if (!background.tells) {
        learn(composed(base, since));
        return told(0, background.count);
      }
      const sighting = background.find(pyramid, hull);
      if (!sighting) {
        pauseMs = ASK_AGAIN_MS;
        if (tMs - seenMs > BLIND_MS) learn(composed(base, since));
        return told(0, background.count);
      }
      seenMs = tMs;
      const seen = aboutPivot(enlargedMotion(sighting.motion, factor), middle.x, middle.y);
      const stays = isStill(seen, sighting.rotationSeDeg);
      since = stays ? none : seen;
      const at = composed(base, since);
      if (stays) rested = null;
      else if (!rested || !isStill(composed(inverse(rested.at), seen), sighting.rotationSeDeg)) rested = { at: seen, tMs };
      const settled = rested !== null && tMs - rested.tMs >= SETTLED_MS;
      const far = Math.abs(seen.rotationDeg) > FAR_DEG || Math.abs(seen.scale - 1) > FAR_SCALE;
      const thin = background.thin(hull) && tMs - learntMs > RELEARN_MS;
      if (settled || far || thin) learn(at);
      return told(sighting.agreement, sighting.points);
    },
  };
}
