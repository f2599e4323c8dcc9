import { expect, test } from 'vitest';
import type { Grey } from '../../src/flow/grey.ts';
import type { LegMotion, SegmentTurn } from '../../src/flow/leg-motion.ts';
import { type LegTracker, startLegTracker } from '../../src/flow/leg-tracker.ts';
import { ms } from '../../src/units.ts';
import { HEIGHT, type LegPose, type LegScene, legLandmarks, legPicture, WIDTH } from './limb-picture.ts';

const FRAME_MS = 50;
const JITTER_PX = 1.5;
/** Frames at rest before anything moves: longer than the rest picture takes. */
const REST_FRAMES = 12;
const RAISE_FRAMES = 30;

/** A straight leg raised by `deg` and held, smoothly; the screen's clockwise is positive, so up is negative. */
const raised = (frame: number, deg: number): LegPose => {
  const share = Math.max(0, Math.min(1, (frame - REST_FRAMES) / RAISE_FRAMES));
  const turn = -deg * 0.5 * (1 - Math.cos(Math.PI * share));
  return { thighDeg: turn, shankDeg: 4 + turn };
};

interface Step {
  readonly pose: LegPose;
  readonly scene: LegScene;
  /** Landmarks come with this frame. */
  readonly landmarks?: boolean;
}

function runOf(steps: readonly Step[], tracker: LegTracker = startLegTracker(['shank', 'thigh'], 'right')): readonly LegMotion[] {
  return steps.map(({ pose, scene, landmarks = true }, frame) =>
    tracker.observe(
      legPicture(pose, { ...scene, seed: frame + 1 }),
      landmarks ? legLandmarks(pose, JITTER_PX, 1000 + frame) : null,
      ms(frame * FRAME_MS),
    ),
  );
}

const raise = (degrees: number, scene: LegScene, change: (frame: number) => Partial<Step> = () => ({})): readonly Step[] =>
  Array.from({ length: REST_FRAMES + RAISE_FRAMES + 6 }, (_, frame) => ({
    pose: raised(frame, degrees),
    scene,
    ...change(frame),
  }));

const found = (turn: SegmentTurn | null): SegmentTurn => {
  if (!turn) throw new Error('expected the segment to be found');
  return turn;
};
const last = (motion: readonly LegMotion[]): LegMotion => motion[motion.length - 1] as LegMotion;

test.each([
  ['textured cloth', 20, { cloth: 'textured', noise: 3 }],
  ['textured cloth', 80, { cloth: 'textured', noise: 3 }],
  ['plain cloth', 20, { cloth: 'plain', noise: 3 }],
  ['plain cloth', 60, { cloth: 'plain', noise: 3 }],
  ['plain cloth, dim and noisy', 45, { cloth: 'plain', noise: 5, gain: 0.5 }],
] as const)('the turn of thigh and shank in a leg raise is followed: %s, %d degrees', (_, degrees, scene) => {
  const steps = raise(degrees, scene);
  const motion = runOf(steps);
  motion.forEach((m, frame) => {
    if (frame < REST_FRAMES) return;
    const truth = raised(frame, degrees).thighDeg;
    expect(Math.abs(found(m.thigh).turnDeg - truth)).toBeLessThan(1 + 0.03 * degrees);
    expect(Math.abs(found(m.shank).turnDeg - truth)).toBeLessThan(1 + 0.03 * degrees);
    expect(found(m.shank).anchor).toBe(1);
  });
});

test('the light may change during the movement', () => {
  const motion = runOf(
    raise(40, { cloth: 'textured', noise: 2 }, (frame) => ({
      scene: { cloth: 'textured', noise: 2, gain: 1 - 0.01 * frame, bias: 0.6 * frame },
    })),
  );
  expect(Math.abs(found(last(motion).shank).turnDeg + 40)).toBeLessThan(1.5);
  expect(Math.abs(found(last(motion).thigh).turnDeg + 40)).toBeLessThan(1.5);
});

test('a knee that bends while the thigh rises turns the shank by itself', () => {
  const motion = runOf(
    raise(30, { cloth: 'textured', noise: 3 }, (frame) => {
      const { thighDeg } = raised(frame, 30);
      return { pose: { thighDeg, shankDeg: 4 - 0.6 * thighDeg } };
    }),
  );
  expect(Math.abs(found(last(motion).thigh).turnDeg + 30)).toBeLessThan(1.5);
  expect(Math.abs(found(last(motion).shank).turnDeg - 18)).toBeLessThan(1.5);
});

test('frames without landmarks are bridged by the picture', () => {
  const motion = runOf(raise(50, { cloth: 'textured', noise: 3 }, (frame) => ({ landmarks: frame <= 14 || frame % 6 === 0 })));
  for (const m of motion.slice(REST_FRAMES)) {
    expect(m.thigh).not.toBeNull();
    expect(m.shank).not.toBeNull();
  }
  expect(Math.abs(found(last(motion).shank).turnDeg + 50)).toBeLessThan(2.5);
});

test('a match that the landmarks contradict is given up in the frames without landmarks too', () => {
  const rest: LegPose = { thighDeg: 0, shankDeg: 4 };
  const elsewhere: LegPose = { thighDeg: 0, shankDeg: 94 };
  const tracker = startLegTracker(['shank'], 'right');
  const shank = Array.from({ length: 40 }, (_, frame) => {
    const posed = frame < 20 || frame % 3 === 0;
    const landmarks = posed ? legLandmarks(frame < 20 ? rest : elsewhere, JITTER_PX, frame + 1) : null;
    const picture = legPicture(rest, { cloth: 'textured', noise: 3, seed: frame + 1 });
    return tracker.observe(picture, landmarks, ms(frame * FRAME_MS)).shank;
  });
  for (const turn of shank.slice(REST_FRAMES, 21)) expect(turn).not.toBeNull();
  // Contradicted from frame 21 on, for longer than 300 ms at 27.
  expect(shank.slice(27)).toEqual(Array(13).fill(null));
});

test('a covered leg is not found, and found again as it was when uncovered', () => {
  const rest: LegPose = { thighDeg: 0, shankDeg: 4 };
  const steps = Array.from({ length: 60 }, (_, frame) => ({
    pose: frame < 35 ? rest : { thighDeg: -10, shankDeg: -6 },
    scene: { cloth: 'textured', noise: 3, covered: frame >= 20 && frame < 40 } as const,
  }));
  const motion = runOf(steps);
  expect(motion[19]?.shank).not.toBeNull();
  for (const m of motion.slice(22, 40)) expect([m.thigh, m.shank]).toEqual([null, null]);
  expect(Math.abs(found(last(motion).shank).turnDeg + 10)).toBeLessThan(1);
  expect(found(last(motion).shank).anchor).toBe(1);
});

test('a leg that looks different when it comes back is taken up anew, its turn going on from where the landmarks see it', () => {
  const steps = Array.from({ length: 80 }, (_, frame) => ({
    pose: frame < 30 ? { thighDeg: 0, shankDeg: 4 } : { thighDeg: -30, shankDeg: -26 },
    scene: { cloth: frame < 30 ? 'textured' : 'plain', noise: 3, covered: frame >= 20 && frame < 40 } as const,
  }));
  const { shank, thigh } = last(runOf(steps));
  expect(found(shank).anchor).toBe(2);
  expect(Math.abs(found(shank).turnDeg + 30)).toBeLessThan(5);
  expect(Math.abs(found(thigh).turnDeg + 30)).toBeLessThan(5);
});

test('a landmark that jumps for a frame does not lose the segment', () => {
  const tracker = startLegTracker(['shank'], 'right');
  const rest: LegPose = { thighDeg: 0, shankDeg: 4 };
  for (let frame = 0; frame < 30; frame++) {
    const seen = frame === 25 ? legLandmarks({ thighDeg: 35, shankDeg: 30 }, 0, 1) : legLandmarks(rest, JITTER_PX, frame + 1);
    const motion = tracker.observe(
      legPicture(rest, { cloth: 'textured', noise: 3, seed: frame + 1 }),
      seen,
      ms(frame * FRAME_MS),
    );
    if (frame >= REST_FRAMES) expect(Math.abs(found(motion.shank).turnDeg)).toBeLessThan(0.5);
  }
});

test('blank, dark and white pictures give nothing, never a NaN', () => {
  for (const level of [0, 127, 255]) {
    const picture: Grey = { width: WIDTH, height: HEIGHT, data: new Uint8Array(WIDTH * HEIGHT).fill(level) };
    const tracker = startLegTracker(['foot', 'shank', 'thigh'], 'right');
    for (let frame = 0; frame < 70; frame++) {
      const motion = tracker.observe(
        picture,
        legLandmarks({ thighDeg: 0, shankDeg: 4 }, JITTER_PX, frame + 1),
        ms(frame * FRAME_MS),
      );
      expect(motion).toEqual({ foot: null, shank: null, thigh: null });
    }
  }
});

test('a picture that turns blank gives nothing', () => {
  const tracker = startLegTracker(['shank', 'thigh'], 'right');
  const rest: LegPose = { thighDeg: 0, shankDeg: 4 };
  const blank: Grey = { width: WIDTH, height: HEIGHT, data: new Uint8Array(WIDTH * HEIGHT).fill(90) };
  for (let frame = 0; frame < 40; frame++) {
    const picture = frame < 20 ? legPicture(rest, { cloth: 'textured', noise: 3, seed: frame + 1 }) : blank;
    const motion = tracker.observe(picture, legLandmarks(rest, JITTER_PX, frame + 1), ms(frame * FRAME_MS));
    if (frame >= 20) expect(motion).toEqual({ foot: null, shank: null, thigh: null });
  }
});

test('nobody in the picture gives nothing', () => {
  const tracker = startLegTracker(['foot', 'shank', 'thigh'], 'right');
  const picture = legPicture({ thighDeg: 0, shankDeg: 4 }, { cloth: 'textured' });
  for (let frame = 0; frame < 20; frame++) {
    expect(tracker.observe(picture, null, ms(frame * FRAME_MS))).toEqual({ foot: null, shank: null, thigh: null });
  }
});

test.each(['textured', 'plain'] as const)('a still segment does not drift in a minute of noise: %s cloth', (cloth) => {
  const rest: LegPose = { thighDeg: 0, shankDeg: 4 };
  // Every frame's noise is new; ten pictures of it, in changing order, stand for all.
  const pictures = Array.from({ length: 10 }, (_, k) => legPicture(rest, { cloth, noise: 3, seed: k + 1 }));
  const tracker = startLegTracker(['shank', 'thigh'], 'right');
  for (let frame = 0; frame < 600; frame++) {
    const motion = tracker.observe(
      pictures[(frame * 7 + Math.floor(frame / 10)) % 10] as Grey,
      legLandmarks(rest, JITTER_PX, frame + 1),
      ms(frame * 100),
    );
    if (frame < REST_FRAMES) continue;
    expect(Math.abs(found(motion.shank).turnDeg)).toBeLessThan(0.3);
    expect(Math.abs(found(motion.thigh).turnDeg)).toBeLessThan(0.3);
  }
});

test('the stated error covers the error met', () => {
  const scene: LegScene = { cloth: 'plain', noise: 5 };
  const motion = runOf(raise(40, scene));
  const within = motion.slice(REST_FRAMES).filter((m, k) => {
    const { turnDeg, seDeg } = found(m.shank);
    return Math.abs(turnDeg - raised(k + REST_FRAMES, 40).thighDeg) <= 2 * seDeg;
  });
  expect(within.length).toBeGreaterThan(0.9 * (motion.length - REST_FRAMES));
});
