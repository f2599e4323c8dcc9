import fc from 'fast-check';
import { expect, test } from 'vitest';
import { motionBetween, type Place, placeAfter, pointAfter } from '../../src/flow/place.ts';

const place = fc.record<Place>({
  turnDeg: fc.double({ min: -90, max: 90, noNaN: true }),
  scale: fc.double({ min: 0.7, max: 1.4, noNaN: true }),
  x: fc.double({ min: 0, max: 640, noNaN: true }),
  y: fc.double({ min: 0, max: 480, noNaN: true }),
});

test('the motion between two places leads from the one to the other', () => {
  fc.assert(
    fc.property(place, place, (from, to) => {
      const end = placeAfter(from, motionBetween(from, to));
      expect(end.turnDeg).toBeCloseTo(to.turnDeg, 6);
      expect(end.scale).toBeCloseTo(to.scale, 6);
      expect(Math.hypot(end.x - to.x, end.y - to.y)).toBeLessThan(1e-6);
    }),
  );
});

test('a point that goes along a step and back again is where it was', () => {
  fc.assert(
    fc.property(place, place, (from, to) => {
      const there = pointAfter({ x: 100, y: 50 }, { from, to });
      const back = pointAfter(there, { from: to, to: from });
      expect(Math.hypot(back.x - 100, back.y - 50)).toBeLessThan(1e-6);
    }),
  );
});

test('a quarter turn clockwise on the screen takes a point on the right to below', () => {
  const from: Place = { turnDeg: 0, scale: 1, x: 10, y: 10 };
  const to: Place = { turnDeg: 90, scale: 1, x: 10, y: 10 };
  const moved = pointAfter({ x: 15, y: 10 }, { from, to });
  expect(moved.x).toBeCloseTo(10, 9);
  expect(moved.y).toBeCloseTo(15, 9);
});
