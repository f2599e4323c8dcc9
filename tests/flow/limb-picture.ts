import type { Grey } from '../../src/flow/grey.ts';
import { LANDMARK, LANDMARK_COUNT, type Landmark, type LandmarkName } from '../../src/pose/landmarks.ts';
import { px, ratio } from '../../src/units.ts';
import { gaussianFrom, type Surface, texture } from './synthetic-picture.ts';

export const WIDTH = 320;
export const HEIGHT = 240;
const HIP = { x: 70, y: 190 };
const LENGTH = 90;
const HALF_WIDTH = 15;

/** A leg as a picture: thigh and shank of the right leg, hip at the left, foot to the right; both turned by so many degrees, clockwise on the screen. */
export interface LegPose {
  readonly thighDeg: number;
  readonly shankDeg: number;
}

export type Cloth = 'textured' | 'plain';

export interface LegScene {
  readonly cloth: Cloth;
  /** Standard deviation of the pixel noise, grey levels, and its seed. */
  readonly noise?: number;
  readonly seed?: number;
  readonly gain?: number;
  readonly bias?: number;
  /** Covers the leg with something else. */
  readonly covered?: boolean;
}

interface Ends {
  readonly knee: { readonly x: number; readonly y: number };
  readonly ankle: { readonly x: number; readonly y: number };
}

const rad = (degrees: number): number => (degrees * Math.PI) / 180;
const along = (from: { x: number; y: number }, degrees: number) => ({
  x: from.x + LENGTH * Math.cos(rad(degrees)),
  y: from.y + LENGTH * Math.sin(rad(degrees)),
});
const endsOf = (pose: LegPose): Ends => {
  const knee = along(HIP, pose.thighDeg);
  return { knee, ankle: along(knee, pose.shankDeg) };
};

/** A surface read at every pixel, once for all pictures. */
const read = (surface: Surface): Float32Array =>
  Float32Array.from({ length: WIDTH * HEIGHT }, (_, i) => surface(i % WIDTH, Math.floor(i / WIDTH)));
const ground = read(texture(77));
const cover = read(texture(901));
const weave = [texture(11), texture(12)] as const;

/** Shade of a limb by how far along (px) and across (-1 to 1) a point lies: rounder and darker to one side, a seam, and cloth. */
function shade(cloth: Cloth, part: 0 | 1, along_: number, across: number): number {
  const seam = 45 * Math.exp(-(((across - 0.2 - 0.002 * along_) * 7) ** 2));
  const fold = 14 * Math.exp(-(((along_ - 30 - 20 * part) / 9) ** 2));
  const round = 75 - 22 * across;
  if (cloth === 'plain') return round + 0.4 * seam + fold;
  return round + seam + 0.5 * ((weave[part] as Surface)(along_, 40 * across) - 125);
}

/** Draws the leg over a textured ground, as a camera with 8 bits would. */
export function legPicture(pose: LegPose, scene: LegScene): Grey {
  const { cloth, noise = 0, seed = 1, gain = 1, bias = 0, covered = false } = scene;
  const { knee } = endsOf(pose);
  const gaussian = gaussianFrom(seed);
  const data = new Uint8Array(WIDTH * HEIGHT);
  const parts = [
    { from: HIP, degrees: pose.thighDeg },
    { from: knee, degrees: pose.shankDeg },
  ].map(({ from, degrees }) => ({ from, cos: Math.cos(rad(degrees)), sin: Math.sin(rad(degrees)) }));
  for (let i = 0; i < data.length; i++) {
    const x = i % WIDTH;
    const y = Math.floor(i / WIDTH);
    let value = (covered ? cover[i] : ground[i]) as number;
    if (!covered) {
      parts.forEach(({ from, cos, sin }, part) => {
        const u = cos * (x - from.x) + sin * (y - from.y);
        const v = cos * (y - from.y) - sin * (x - from.x);
        const beyond = u - Math.max(0, Math.min(LENGTH, u));
        const inside = HALF_WIDTH - Math.hypot(beyond, v);
        const share = Math.max(0, Math.min(1, inside + 0.5));
        if (share > 0) value = share * shade(cloth, part as 0 | 1, u, v / HALF_WIDTH) + (1 - share) * value;
      });
    }
    data[i] = Math.max(0, Math.min(255, Math.round(gain * value + bias + (noise > 0 ? noise * gaussian() : 0))));
  }
  return { width: WIDTH, height: HEIGHT, data };
}

/** Landmarks of the leg with errors of a pose model: `jitterPx` standard deviation a point. */
export function legLandmarks(pose: LegPose, jitterPx: number, seed: number): readonly Landmark[] {
  const gaussian = gaussianFrom(seed);
  const { knee, ankle } = endsOf(pose);
  const all: Landmark[] = Array.from({ length: LANDMARK_COUNT }, () => ({ x: px(0), y: px(0), z: px(0), visibility: ratio(1) }));
  const put = (name: LandmarkName, at: { x: number; y: number }) => {
    all[LANDMARK[name]] = {
      x: px(at.x + jitterPx * gaussian()),
      y: px(at.y + jitterPx * gaussian()),
      z: px(0),
      visibility: ratio(1),
    };
  };
  put('rightHip', HIP);
  put('rightKnee', knee);
  put('rightAnkle', ankle);
  put('rightHeel', { x: ankle.x + 4, y: ankle.y + 8 });
  put('rightToe', { x: ankle.x + 30, y: ankle.y - 10 });
  return all;
}
