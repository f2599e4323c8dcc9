import fc from 'fast-check';
import type { SegmentTurn } from '../../src/flow/leg-motion.ts';
import type { Observation } from '../../src/measure/observation.ts';
import { LANDMARK_COUNT, type Landmark } from '../../src/pose/landmarks.ts';
import type { RecordingMeta } from '../../src/record/recording.ts';
import { deg, ms, px, ratio } from '../../src/units.ts';

export const META: RecordingMeta = {
  source: { file: 'foot-tap.mp4', width: 640, height: 480, durationMs: ms(12000) },
  model: 'full',
  exercise: 'foot-tap',
  side: 'left',
};

export const number = (min: number, max: number) => fc.double({ min, max, noNaN: true });
const aLandmark: fc.Arbitrary<Landmark> = fc.record({
  x: number(-500, 2500).map(px),
  y: number(-500, 2500).map(px),
  z: number(-2000, 2000).map(px),
  visibility: number(0, 1).map(ratio),
});
const aTurn: fc.Arbitrary<SegmentTurn | null> = fc.option(
  fc.record({
    turnDeg: number(-400, 400).map(deg),
    seDeg: number(0, 40).map(deg),
    zncc: number(-1, 1).map(ratio),
    anchor: fc.nat(1000),
  }),
);
const anObservation = fc.record({
  stepMs: number(1, 100),
  landmarks: fc.option(fc.array(aLandmark, { minLength: LANDMARK_COUNT, maxLength: LANDMARK_COUNT })),
  motion: fc.option(fc.record({ foot: aTurn, shank: aTurn, thigh: aTurn })),
  camera: fc.option(
    fc.record({
      rotationDeg: number(-180, 180).map(deg),
      shiftX: number(-900, 900).map(px),
      shiftY: number(-900, 900).map(px),
      scale: number(0.5, 2).map(ratio),
      agreement: number(0, 1).map(ratio),
      points: fc.nat(40),
    }),
  ),
  brightness: fc.option(number(0, 255)),
});
/** Observations on an advancing clock. */
export const observations: fc.Arbitrary<readonly Observation[]> = fc.array(anObservation, { maxLength: 6 }).map((steps) => {
  let now = 0;
  return steps.map(({ stepMs, ...rest }) => {
    now += stepMs;
    return { ...rest, tMs: ms(now) };
  });
});

/** A recording as long as a real one, with points that move as a body's do. */
export function twelveSeconds(width: number, height: number): readonly Observation[] {
  return Array.from({ length: 360 }, (_, frame) => ({
    tMs: ms((frame * 1000) / 30),
    landmarks: Array.from({ length: LANDMARK_COUNT }, (_, i) => ({
      x: px(width * (0.2 + 0.018 * i) + 3 * Math.sin(frame / 9 + i)),
      y: px(height * (0.9 - 0.02 * i) + 3 * Math.cos(frame / 7 + i)),
      z: px(300 * Math.sin(i + frame / 30)),
      visibility: ratio(0.5 + 0.49 * Math.sin(i)),
    })),
    motion: {
      foot: { turnDeg: deg(15 * Math.sin(frame / 20)), seDeg: deg(0.31), zncc: ratio(0.961), anchor: 0 },
      shank: { turnDeg: deg(Math.sin(frame / 25)), seDeg: deg(0.22), zncc: ratio(0.983), anchor: 0 },
      thigh: null,
    },
    camera: { rotationDeg: deg(0.3), shiftX: px(4.2), shiftY: px(-1), scale: ratio(1), agreement: ratio(0.9), points: 34 },
    brightness: 118.4,
  }));
}
