import { expect, test } from 'vitest';
import { uniformFrom } from '../../src/flow/prng.ts';
import { noiseLevel } from '../../src/signal/noise-level.ts';

const normals = (seed: number) => {
  const random = uniformFrom(seed);
  return () => Math.sqrt(-2 * Math.log(1 - random())) * Math.cos(2 * Math.PI * random());
};
const FRAMES = Array.from({ length: 600 }, (_, i) => i);

test.each([0.1, 0.5, 2])('white noise with an SD of %f is told within a sixth', (sd) => {
  const normal = normals(3);
  const told = noiseLevel(FRAMES.map(() => sd * normal()));
  expect(Math.abs(told - sd)).toBeLessThan(sd / 6);
});

test('a slow movement is not noise', () => {
  const normal = normals(4);
  const told = noiseLevel(FRAMES.map((i) => 30 * Math.sin(i / 20) + 0.2 * normal()));
  expect(told).toBeLessThan(0.25);
});

test('taps of four a second at 30 frames a second are mostly not noise', () => {
  expect(noiseLevel(FRAMES.map((i) => 7 * Math.cos((2 * Math.PI * 4 * i) / 30)))).toBeLessThan(0.6);
});

test('differences across a hole are left out, and too few values say nothing', () => {
  const level = FRAMES.map((i) => (i === 300 ? null : i < 300 ? 0 : 50));
  expect(noiseLevel(level)).toBe(0);
  expect(noiseLevel([1, 9])).toBe(0);
});
