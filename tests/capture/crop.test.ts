import fc from 'fast-check';
import { expect, test } from 'vitest';
import { cutOf, LEAST_CROP_PX } from '../../src/capture/crop.ts';

const SIZE = { width: 641, height: 479 };
const side = fc.double({ min: -200, max: 900, noNaN: true });

test('a cut lies inside of the picture, on even pixels, and is large enough; or there is none', () => {
  fc.assert(
    fc.property(side, side, side, side, (left, top, width, height) => {
      const cut = cutOf({ left, top, width, height }, SIZE);
      if (!cut) return;
      for (const value of Object.values(cut)) expect(value % 2).toBe(0);
      expect(Math.min(cut.left, cut.top)).toBeGreaterThanOrEqual(0);
      expect(cut.left + cut.width).toBeLessThanOrEqual(SIZE.width);
      expect(cut.top + cut.height).toBeLessThanOrEqual(SIZE.height);
      expect(Math.min(cut.width, cut.height)).toBeGreaterThanOrEqual(LEAST_CROP_PX);
    }),
  );
});

test.each([
  { crop: { left: 10, top: 21, width: 300.5, height: 200 }, cut: { left: 10, top: 20, width: 300, height: 200 } },
  { crop: { left: -50, top: -50, width: 2000, height: 2000 }, cut: { left: 0, top: 0, width: 640, height: 478 } },
  { crop: { left: 10, top: 10, width: 90, height: 300 }, cut: null },
  { crop: { left: 600, top: 10, width: 300, height: 300 }, cut: null },
])('$crop is cut as $cut', ({ crop, cut }) => {
  expect(cutOf(crop, SIZE)).toEqual(cut);
});
