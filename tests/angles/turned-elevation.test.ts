import fc from 'fast-check';
import { expect, test } from 'vitest';
import { turnedElevation } from '../../src/angles/turned-elevation.ts';
import { type Deg, deg, degOfRad, radOfDeg } from '../../src/units.ts';

/**
 * A pinhole camera above a person lying level, turned towards their feet: direction of a leg in its picture, up positive. The camera stands upright
 * and looks level; the leg swings in the body's upright plane. Written from the geometry, without the formula under test.
 */
function pictureDirection(raisedDeg: number, { turnDeg = 0, heightM = 0.5, distanceM = 2.4 }): Deg {
  const LEG_M = 0.85;
  const turn = radOfDeg(deg(turnDeg));
  const raised = radOfDeg(deg(raisedDeg));
  const project = (along: number, up: number) => {
    const x = along * Math.cos(turn);
    const depth = distanceM - along * Math.sin(turn);
    return { x: x / depth, y: (up - heightM) / depth };
  };
  const hip = project(0, 0);
  const ankle = project(LEG_M * Math.cos(raised), LEG_M * Math.sin(raised));
  return degOfRad(Math.atan2(ankle.y - hip.y, ankle.x - hip.x));
}

test.each([
  { turnDeg: 0, heightM: 0.5 },
  { turnDeg: 6, heightM: 0.6 },
  { turnDeg: 12, heightM: 0.8 },
  { turnDeg: -12, heightM: 0.8 },
])('a leg raised before a camera turned by $turnDeg, $heightM m above it, comes out within 1.2 degrees', (camera) => {
  const level = pictureDirection(0, camera);
  let plainWorst = 0;
  for (const raised of [10, 20, 35, 50, 65, 80]) {
    const turned = deg(pictureDirection(raised, camera) - level);
    expect(Math.abs(turnedElevation(turned, level) - raised)).toBeLessThan(1.2);
    plainWorst = Math.max(plainWorst, Math.abs(turned - raised));
  }
  if (Math.abs(camera.turnDeg) === 12) expect(plainWorst).toBeGreaterThan(3);
});

test('without a slope the turn is the elevation; level stays level whatever the slope', () => {
  fc.assert(
    fc.property(fc.double({ min: -30, max: 120, noNaN: true }), (turned) => {
      expect(turnedElevation(deg(turned), deg(0))).toBeCloseTo(turned, 9);
    }),
  );
  fc.assert(
    fc.property(fc.double({ min: -20, max: 20, noNaN: true }), (slope) => {
      expect(turnedElevation(deg(0), deg(slope))).toBeCloseTo(0, 9);
    }),
  );
});

test('further up in the picture is further up, also past the vertical', () => {
  fc.assert(
    fc.property(
      fc.double({ min: -20, max: 20, noNaN: true }),
      fc.double({ min: -20, max: 110, noNaN: true }),
      fc.double({ min: 0.1, max: 10, noNaN: true }),
      (slope, turned, more) => {
        expect(turnedElevation(deg(turned + more), deg(slope))).toBeGreaterThan(turnedElevation(deg(turned), deg(slope)));
      },
    ),
  );
});
