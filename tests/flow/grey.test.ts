import { expect, test } from 'vitest';
import { cropOf, type Grey } from '../../src/flow/grey.ts';

const ramp: Grey = {
  width: 4,
  height: 3,
  data: Uint8Array.from({ length: 12 }, (_, i) => 10 * (i % 4) + 40 * Math.floor(i / 4)),
};

test('a crop is cut to the frame and remembers where it came from', () => {
  const crop = cropOf(ramp, { x: 1.4, y: -2, width: 10, height: 3.2 });
  expect(crop).toEqual({ width: 3, height: 2, originX: 1, originY: 0, data: Uint8Array.from([10, 20, 30, 50, 60, 70]) });
});

test('a rectangle that misses the frame, or is not one, gives no crop', () => {
  expect(cropOf(ramp, { x: 4, y: 0, width: 5, height: 5 })).toBeUndefined();
  expect(cropOf(ramp, { x: Number.NaN, y: 0, width: 5, height: 5 })).toBeUndefined();
});
