import type { Facing } from '../../src/angles/joint-angle.ts';
import type { Exercise } from '../../src/exercises/exercise.ts';
import { uniformFrom } from '../../src/flow/prng.ts';
import type { Observation } from '../../src/measure/observation.ts';
import type { Posture } from '../../src/pose/head-up.ts';
import { LANDMARK, LANDMARK_COUNT, type Landmark, type LandmarkName, type Side } from '../../src/pose/landmarks.ts';
import { deg, ms, px, radOfDeg, ratio } from '../../src/units.ts';

export const SIZE = { width: 640, height: 480 } as const;

/** A body seen from the side; angles as the product defines them. */
export interface BodyPose {
  readonly posture: Posture | 'standing';
  /** The near leg, the person's own. */
  readonly side: Side;
  readonly facing: Facing;
  /** Foot against shank, 0 square, up positive. */
  readonly ankleDeg: number;
  readonly kneeDeg: number;
  /** The thigh above the horizontal. */
  readonly thighDeg: number;
  /** Pixels of a thigh; all else goes with it. */
  readonly thighPx: number;
  readonly shiftX: number;
  readonly shiftY: number;
  readonly visibility: number;
}

interface At {
  readonly x: number;
  readonly y: number;
}

const SITTING: BodyPose = {
  posture: 'upright',
  side: 'left',
  facing: 'left',
  ankleDeg: 0,
  kneeDeg: 90,
  thighDeg: 0,
  thighPx: 120,
  shiftX: 0,
  shiftY: 0,
  visibility: 0.95,
};

export const sitting = (over: Partial<BodyPose> = {}): BodyPose => ({ ...SITTING, ...over });
export const lying = (over: Partial<BodyPose> = {}): BodyPose => ({
  ...SITTING,
  posture: 'lying',
  kneeDeg: 0,
  shiftY: 60,
  ...over,
});
export const standing = (over: Partial<BodyPose> = {}): BodyPose => ({
  ...SITTING,
  posture: 'standing',
  kneeDeg: 5,
  thighDeg: -88,
  shiftY: -60,
  ...over,
});

/** All 33 landmarks of a body. Built facing right about the picture's middle, then mirrored. */
export function landmarksOf(body: BodyPose): readonly Landmark[] {
  const unit = body.thighPx;
  const from = (start: At, directionDeg: number, length: number): At => ({
    x: start.x + length * unit * Math.cos(radOfDeg(deg(directionDeg))),
    y: start.y + length * unit * Math.sin(radOfDeg(deg(directionDeg))),
  });
  const thigh = -body.thighDeg;
  const shank = thigh + body.kneeDeg;
  const foot = shank - 90 - body.ankleDeg;
  const hip: At = { x: 260, y: 240 };
  const knee = from(hip, thigh, 1);
  const ankle = from(knee, shank, 0.95);
  const heel = from(from(ankle, foot, -0.12), foot + 90, 0.12);
  const toe = from(heel, foot, 0.5);
  const trunk = body.posture === 'lying' ? 180 : -90;
  const shoulder = from(hip, trunk, 1.2);
  const nose = from(shoulder, trunk, 0.5);
  const near = {
    Shoulder: shoulder,
    Elbow: from(shoulder, trunk, -0.5),
    Wrist: hip,
    Hip: hip,
    Knee: knee,
    Ankle: ankle,
    Heel: heel,
    Toe: toe,
  };
  const all: Landmark[] = Array.from({ length: LANDMARK_COUNT }, () => placed(body, nose, 0));
  const other: Side = body.side === 'left' ? 'right' : 'left';
  for (const [name, at] of Object.entries(near)) {
    all[LANDMARK[`${body.side}${name}` as LandmarkName]] = placed(body, at, -0.2 * unit);
    all[LANDMARK[`${other}${name}` as LandmarkName]] = placed(body, farPoint(body, name, at), 0.2 * unit);
  }
  return all;
}

/** Where the model sees a point of the far side; of a person lying side-on its shoulder and hip a little nearer to the feet. */
function farPoint({ posture, thighPx }: BodyPose, name: string, { x, y }: At): At {
  const length = (1.2 + 1 + 0.95) * thighPx;
  if (posture === 'lying' && name === 'Shoulder') return { x: x + 0.039 * length, y: y - thighPx / 30 };
  if (posture === 'lying' && name === 'Hip') return { x: x + 0.0085 * length, y: y - thighPx / 30 };
  return { x: x + 4, y: y - thighPx / 30 };
}

function placed(body: BodyPose, { x, y }: At, z: number): Landmark {
  const shown = body.facing === 'right' ? x : SIZE.width - x;
  return { x: px(shown + body.shiftX), y: px(y + body.shiftY), z: px(z), visibility: ratio(body.visibility) };
}

/** The same picture in a mirror: left and right of the picture change, and so do the person's sides. */
export function mirrored(observation: Observation): Observation {
  const { landmarks, motion } = observation;
  const swapped = landmarks?.map((_, i, all) => {
    const p = all[twinOf(i)] as Landmark;
    return { ...p, x: px(SIZE.width - p.x) };
  });
  const turned = (part: 'foot' | 'shank' | 'thigh') => {
    const turn = motion?.[part];
    return turn ? { ...turn, turnDeg: deg(-turn.turnDeg) } : null;
  };
  return {
    ...observation,
    landmarks: swapped ?? null,
    motion: motion && { foot: turned('foot'), shank: turned('shank'), thigh: turned('thigh') },
  };
}

/** Left points have odd numbers from 7 on, their twins on the right the next even one. */
const twinOf = (i: number): number => (i < 7 ? i : i % 2 === 1 ? i + 1 : i - 1);

export interface RecordingOptions {
  readonly fps?: number;
  readonly fromMs?: number;
  readonly lastsMs: number;
  readonly bodyAt: (tMs: number) => BodyPose | null;
  /** Half the width of the landmarks' scatter, px. */
  readonly noisePx?: number;
  readonly seed?: number;
  /** Whether the picture's own motion is seen too, exactly. */
  readonly flow?: boolean;
  readonly brightness?: number;
}

/** What a camera would see of a body that moves, frame by frame. */
export function recording({
  fps = 30,
  fromMs = 0,
  lastsMs,
  bodyAt,
  noisePx = 0,
  seed = 1,
  flow = false,
  brightness = 120,
}: RecordingOptions) {
  const random = uniformFrom(seed);
  const jitter = () => noisePx * (2 * random() - 1);
  const observations: Observation[] = [];
  for (let i = 0; (i * 1000) / fps < lastsMs; i++) {
    const tMs = ms(fromMs + (i * 1000) / fps);
    const body = bodyAt(tMs);
    const landmarks = body && landmarksOf(body).map((p) => ({ ...p, x: px(p.x + jitter()), y: px(p.y + jitter()) }));
    observations.push({ tMs, landmarks, motion: flow && body ? motionOf(body) : null, camera: null, brightness });
  }
  return observations;
}

/** The segments' turns since they lay in the picture's x axis, clockwise. */
function motionOf(body: BodyPose): NonNullable<Observation['motion']> {
  const sign = body.facing === 'right' ? 1 : -1;
  const turn = (degrees: number) => ({ turnDeg: deg(sign * degrees), seDeg: deg(0.1), zncc: ratio(0.95), anchor: 1 });
  const thigh = -body.thighDeg;
  const shank = thigh + body.kneeDeg;
  return { thigh: turn(thigh), shank: turn(shank - 90), foot: turn(shank - 90 - body.ankleDeg) };
}

/** Movements there and back as raised cosines: 0 at rest, `rangeDeg` at the top. */
export function movementsAt(
  tMs: number,
  { firstMs = 1500, everyMs, lastsMs, ranges }: { firstMs?: number; everyMs: number; lastsMs: number; ranges: readonly number[] },
): number {
  const number = Math.floor((tMs - firstMs) / everyMs);
  const range = ranges[number];
  const share = (tMs - firstMs - number * everyMs) / lastsMs;
  return range === undefined || share < 0 || share > 1 ? 0 : (range * (1 - Math.cos(2 * Math.PI * share))) / 2;
}

/** A spec of a live set for the exercise, in the builder's picture. */
export const specOf = (exercise: Exercise, side: Side = 'left', targetReps: number | null = null) => ({
  exercise,
  side,
  size: SIZE,
  targetReps,
  endsItself: true,
});
