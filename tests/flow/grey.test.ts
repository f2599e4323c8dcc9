import { expect, test } from 'vitest';
import { contains, cropOf, type Grey, sampleBilinear } from '../../src/flow/grey.ts';

const ramp: Grey = {
  width: 4,
  height: 3,
  data: Uint8Array.from({ length: 12 }, (_, i) => 10 * (i % 4) + 40 * Math.floor(i / 4)),
};

test('between pixels a plane is read exactly', () => {
  expect(sampleBilinear(ramp, 1.25, 0.5)).toBeCloseTo(12.5 + 20, 10);
  expect(sampleBilinear(ramp, 3, 2)).toBe(110);
});

test('outside the picture the nearest edge pixel is read', () => {
  expect(sampleBilinear(ramp, -7, 1)).toBe(40);
  expect(sampleBilinear(ramp, 9, 99)).toBe(110);
  expect(contains(ramp, 3, 2)).toBe(true);
  expect(contains(ramp, 3.01, 2)).toBe(false);
});

test('a crop is cut to the frame and remembers where it came from', () => {
  const crop = cropOf(ramp, { x: 1.4, y: -2, width: 10, height: 3.2 });
  expect(crop).toEqual({ width: 3, height: 2, originX: 1, originY: 0, data: Uint8Array.from([10, 20, 30, 50, 60, 70]) });
});

test('a rectangle that misses the frame, or is not one, gives no crop', () => {
  expect(cropOf(ramp, { x: 4, y: 0, width: 5, height: 5 })).toBeUndefined();
  expect(cropOf(ramp, { x: Number.NaN, y: 0, width: 5, height: 5 })).toBeUndefined();
});
