import { describe, expect, test } from 'vitest';
import { type CameraMotion, startCameraWatch } from '../../src/flow/camera-motion.ts';
import type { Grey } from '../../src/flow/grey.ts';
import { inverse, movedPoint, type PlaneMotion } from '../../src/flow/plane-motion.ts';
import type { Landmark } from '../../src/pose/landmarks.ts';
import { ms, px, ratio } from '../../src/units.ts';
import { gaussianFrom, motionOf } from './synthetic-picture.ts';

const WIDTH = 640;
const HEIGHT = 480;
const FRAME_MS = 40;
const MIDDLE = { x: (WIDTH - 1) / 2, y: (HEIGHT - 1) / 2 };

interface Box {
  readonly at: readonly [x: number, y: number];
  readonly half: readonly [width: number, height: number];
  readonly lighter: number;
}

/** A room: frames on a plain wall, furniture on a floor, nothing finer. */
const ROOM: readonly Box[] = [
  { at: [320, 630], half: [600, 250], lighter: -40 },
  { at: [90, 90], half: [50, 30], lighter: 50 },
  { at: [560, 110], half: [40, 60], lighter: -60 },
  { at: [320, 60], half: [60, 25], lighter: 35 },
  { at: [80, 320], half: [35, 45], lighter: -45 },
  { at: [570, 330], half: [45, 40], lighter: -30 },
  { at: [110, 430], half: [40, 20], lighter: 40 },
  { at: [520, 440], half: [60, 18], lighter: -35 },
  { at: [330, 440], half: [30, 15], lighter: 30 },
];
/** 1 inside, 0 outside, an edge 3 px wide. */
const inside = (x: number, half: number): number => Math.max(0, Math.min(1, (half - Math.abs(x)) / 3 + 0.5));
const room = (x: number, y: number): number => {
  let value = 150;
  for (const { at, half, lighter } of ROOM) value += lighter * inside(x - at[0], half[0]) * inside(y - at[1], half[1]);
  return value;
};
const cloth = (x: number, y: number): number => 105 + 25 * Math.sin(0.31 * x + 0.12 * y) + 25 * Math.sin(0.23 * y - 0.17 * x);

const normal = gaussianFrom(7);
const NOISE = Float32Array.from({ length: 65_521 }, normal);

interface Moment {
  readonly camera?: PlaneMotion;
  /** Left edge of a textured person 150 px wide and 380 high; none without. */
  readonly personAt?: number;
  readonly noise?: number;
  readonly gain?: number;
  readonly bias?: number;
  readonly landmarks?: readonly Landmark[] | null;
}

const still = motionOf(0, 0, 0, MIDDLE.x, MIDDLE.y);
const moved = (rotation: number, x: number, y: number, scale = 1) => motionOf(rotation, x, y, MIDDLE.x, MIDDLE.y, scale);

/** The room without noise as the camera sees it; the same motion is not drawn twice in a row. */
let drawn: { readonly camera: PlaneMotion; readonly picture: Float32Array } | null = null;
function roomSeen(camera: PlaneMotion): Float32Array {
  if (JSON.stringify(drawn?.camera) === JSON.stringify(camera) && drawn) return drawn.picture;
  // The way back as two rows of a matrix: what `movedPoint` says of the corners, everywhere.
  const back = inverse(camera);
  const [ox, oy] = movedPoint(back, 0, 0);
  const [ax, ay] = movedPoint(back, 1, 0);
  const [bx, by] = movedPoint(back, 0, 1);
  const picture = new Float32Array(WIDTH * HEIGHT);
  for (let y = 0; y < HEIGHT; y++) {
    for (let x = 0; x < WIDTH; x++) {
      picture[y * WIDTH + x] = room(ox + x * (ax - ox) + y * (bx - ox), oy + x * (ay - oy) + y * (by - oy));
    }
  }
  drawn = { camera, picture };
  return picture;
}

function pictureOf({ camera = still, personAt, noise = 2, gain = 1, bias = 0 }: Moment, seed: number): Grey {
  const behind = roomSeen(camera);
  const data = new Uint8Array(WIDTH * HEIGHT);
  for (let i = 0, n = seed * 7919; i < data.length; i++, n++) {
    const x = i % WIDTH;
    const y = (i - x) / WIDTH;
    const before = personAt !== undefined && x >= personAt && x < personAt + 150 && y > 90 && y < 470;
    const value = before ? cloth(x - 1.7 * personAt, y) : (behind[i] as number);
    data[i] = Math.max(0, Math.min(255, Math.round(gain * value + bias + noise * (NOISE[n % NOISE.length] as number))));
  }
  return { width: WIDTH, height: HEIGHT, data };
}

/** Points all over a person who stands at `left`. */
const pose = (left: number): readonly Landmark[] =>
  Array.from({ length: 33 }, (_, i) => ({
    x: px(left + 20 + 110 * ((i % 5) / 4)),
    y: px(110 + 340 * (i / 32)),
    z: px(0),
    visibility: ratio(1),
  }));

function watch(moments: readonly Moment[]): readonly CameraMotion[] {
  const camera = startCameraWatch();
  return moments.map((m, i) =>
    camera.observe(pictureOf(m, i + 1), m.landmarks === undefined ? pose(240) : m.landmarks, ms(i * FRAME_MS)),
  );
}
const lasting = (count: number, of: (frame: number) => Moment): readonly Moment[] =>
  Array.from({ length: count }, (_, i) => of(i));
const end = (seen: readonly CameraMotion[]): CameraMotion => seen[seen.length - 1] as CameraMotion;

const expectMotion = (seen: CameraMotion, rotation: number, x: number, y: number): void => {
  expect(Math.abs(seen.rotationDeg - rotation)).toBeLessThan(0.05);
  expect(Math.abs(seen.shiftX - x)).toBeLessThan(0.1);
  expect(Math.abs(seen.shiftY - y)).toBeLessThan(0.1);
};
const expectNone = (seen: readonly CameraMotion[]): void => {
  for (const { rotationDeg, shiftX, shiftY, scale } of seen) {
    expect({ rotationDeg, shiftX, shiftY, scale }).toEqual({ rotationDeg: 0, shiftX: 0, shiftY: 0, scale: 1 });
  }
};

test('a person known from frames that are not looked at is left out all the same', () => {
  // A still camera is looked at in every second frame: here those without landmarks.
  const seen = watch(
    lasting(20, (i) => ({
      personAt: i < 10 ? 240 : 20,
      landmarks: i === 1 || (i > 0 && i % 2 === 0) ? pose(i < 10 ? 240 : 20) : null,
    })),
  );
  expectNone(seen);
  expect((seen[7] as CameraMotion).points).toBeGreaterThan(0);
  expect(end(seen).points).toBeLessThan((seen[7] as CameraMotion).points);
});

describe('a camera that moves is followed', () => {
  test.each([
    [0, 2.3, -1.7],
    [0.5, 0, 0],
    [-3, 8.4, 5.2],
    [4, -20, 12],
  ])('by %d degrees, %d px to the right, %d px down, in half a second', (rotation, x, y) => {
    const seen = watch(
      lasting(20, (i) => {
        const share = Math.min(1, Math.max(0, (i - 3) / 12));
        return { camera: moved(rotation * share, x * share, y * share) };
      }),
    );
    expectMotion(end(seen), rotation, x, y);
    expect(end(seen).agreement).toBeGreaterThan(0.8);
    expectMotion(seen[9] as CameraMotion, rotation / 2, x / 2, y / 2);
  });

  test('from one frame to the next: a knock', () => {
    const seen = watch(lasting(6, (i) => ({ camera: i < 3 ? still : moved(1.5, 18, -11) })));
    expectNone(seen.slice(0, 3));
    // A still camera is glanced at every second frame or so.
    expectMotion(seen[5] as CameraMotion, 1.5, 18, -11);
  });

  test('with a person in the middle who moves as well', () => {
    const seen = watch(
      lasting(14, (i) => ({ camera: i < 5 ? still : moved(2, 6, 4), personAt: 240 + 4 * (i % 3), landmarks: pose(240) })),
    );
    expectMotion(end(seen), 2, 6, 4);
  });

  test('and followed on after it has come to rest, without creeping', () => {
    const seen = watch(lasting(60, (i) => ({ camera: i < 3 ? still : moved(-2, 5, 3), noise: 4 })));
    const after = seen.slice(25);
    expectMotion(end(seen), -2, 5, 3);
    expect(new Set(after.map((s) => s.rotationDeg)).size).toBe(1);
  });

  test('over many degrees, by several reference pictures', () => {
    const seen = watch(lasting(40, (i) => ({ camera: moved(Math.min(12, 0.4 * i), 0, 0) })));
    expect(Math.abs(end(seen).rotationDeg - 12)).toBeLessThan(0.1);
  });
});

describe('a camera that stands is said to stand, exactly', () => {
  test('in noise', () => expectNone(watch(lasting(40, () => ({ noise: 6 })))));
  test('in the dim', () => expectNone(watch(lasting(40, () => ({ noise: 6, gain: 0.35 })))));
  test('while the light is switched on', () =>
    expectNone(watch(lasting(30, (i) => (i < 10 ? { gain: 0.5, bias: 10 } : { gain: 1.1, bias: 5 })))));
  test('while a person moves before it', () =>
    expectNone(watch(lasting(30, (i) => ({ personAt: 240 + 20 * Math.sin(i / 3), landmarks: pose(240) })))));
  test('while somebody else walks through the picture', () =>
    expectNone(watch(lasting(60, (i) => ({ personAt: -150 + 13 * i })))));
});

test('before anybody is known nothing is told: the person may be all there is to see', () => {
  const seen = watch(lasting(6, (i) => ({ camera: moved(i, 0, 0), landmarks: null })));
  expectNone(seen);
  expect(end(seen)).toMatchObject({ agreement: 0, points: 0 });
});

test('a frame without landmarks is watched with the last known ones', () => {
  const seen = watch(lasting(12, (i) => ({ camera: i < 4 ? still : moved(1, 4, 0), ...(i > 0 ? { landmarks: null } : {}) })));
  expectMotion(end(seen), 1, 4, 0);
});

test('a bare wall tells nothing: no points, no agreement, no motion', () => {
  const bare = motionOf(0, 5000, -5000, MIDDLE.x, MIDDLE.y);
  const seen = watch(lasting(10, () => ({ camera: bare, noise: 3 })));
  expectNone(seen);
  expect(end(seen).agreement).toBe(0);
});
