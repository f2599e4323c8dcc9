import fc from 'fast-check';
import { expect, test } from 'vitest';
import { squaredDirection } from '../../src/angles/turned-line.ts';
import { deg } from '../../src/units.ts';

const RAD = Math.PI / 180;
/** A line in the side plane at `angle`, as a level camera turned by `turn` sees it far away: depth is lost, heights stay. */
const seenBy = (angle: number, turn: number): number =>
  Math.atan2(Math.sin(angle * RAD), Math.cos(angle * RAD) * Math.cos(turn * RAD)) / RAD;

test('a line\u2019s direction comes out as it is in its own plane, for every turn of the camera', () => {
  fc.assert(
    fc.property(fc.integer({ min: -179, max: 179 }), fc.integer({ min: -30, max: 30 }), (angle, turn) => {
      expect(squaredDirection(deg(seenBy(angle, turn)), deg(turn))).toBeCloseTo(angle, 6);
    }),
  );
});

test.each([190, 365, -200])('a direction of %d degrees stays within its own turn', (angle) => {
  expect(Math.abs(squaredDirection(deg(angle), deg(25)) - angle)).toBeLessThan(10);
});

test('a camera that is square on, a level line and a plumb one change nothing', () => {
  expect(squaredDirection(deg(37), deg(0))).toBeCloseTo(37, 9);
  for (const angle of [0, 90, 180, -90]) expect(squaredDirection(deg(angle), deg(20))).toBeCloseTo(angle, 9);
});
