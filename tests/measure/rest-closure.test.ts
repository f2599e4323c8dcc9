import { expect, test } from 'vitest';
import type { AngleInFrame } from '../../src/measure/angle-series.ts';
import { restClosure } from '../../src/measure/rest-closure.ts';
import type { Movement } from '../../src/reps/movement.ts';
import { deg, ms } from '../../src/units.ts';

const FRAME_MS = 50;
const LINE = { directionDeg: deg(0), lengthPx: 80 };
const movement = (startMs: number, endMs: number): Movement => ({
  startMs: ms(startMs),
  peakMs: ms((startMs + endMs) / 2),
  endMs: ms(endMs),
  startDeg: deg(0),
  peakDeg: deg(12),
  rangeDeg: deg(12),
  holdMs: ms(0),
  complete: true,
});
const frame = (angle: number, landmarkDeg: number | null): AngleInFrame => ({
  deg: deg(angle),
  leg: { thigh: LINE, shank: LINE, foot: LINE },
  variance: 0.1,
  source: 'flow',
  landmarkDeg: landmarkDeg === null ? null : deg(landmarkDeg),
  kneeDeg: null,
});
/** Three seconds with a movement from 1000 to 2000 ms; before it both angles are 0, after it these. */
const set = (after: number, landmarkAfter: number | null) => {
  const tMs = Array.from({ length: 60 }, (_, i) => i * FRAME_MS);
  const frames = tMs.map((t) => (t < 1500 ? frame(0, landmarkAfter === null ? null : 0) : frame(after, landmarkAfter)));
  return { tMs, frames };
};
const closureOf = ({ tMs, frames }: ReturnType<typeof set>, others: readonly Movement[] = []) => {
  const m = movement(1000, 2000);
  return restClosure(m, [m, ...others], tMs, frames);
};

test('an angle that comes back to where it was has closed', () => expect(closureOf(set(0, 0))).toBe(0));
test('one that comes to rest 3 degrees off while the landmarks have come back has not', () =>
  expect(closureOf(set(3, 0))).toBe(3));
test('a leg that came to lie elsewhere, as the landmarks see too, has', () => expect(closureOf(set(3, 3))).toBe(0));
test('landmarks that jitter are no reason for doubt', () => expect(closureOf(set(0, 4))).toBe(0));
test('without landmarks the whole difference counts', () => expect(closureOf(set(-2, null))).toBe(2));
test('a movement that runs on into the next one tells nothing', () => {
  expect(closureOf(set(3, 0), [movement(2050, 2600)])).toBeNull();
});
