import { expect, test } from 'vitest';
import type { BodyPoints } from '../../src/measure/leg-sample.ts';
import { inPosture } from '../../src/measure/posture.ts';
import { type Deg, deg, px, radOfDeg } from '../../src/units.ts';

/** A body whose trunk rises from the hip by `trunkDeg` and whose thigh falls from it by `thighDeg`, both from the picture's horizontal. */
function body(trunkDeg: Deg, thighDeg: Deg, facing: 1 | -1 = 1): BodyPoints {
  const from = (x: number, y: number, directionDeg: Deg, length: number) => ({
    x: px(x + facing * length * Math.cos(radOfDeg(directionDeg))),
    y: px(y + length * Math.sin(radOfDeg(directionDeg))),
  });
  const hip = { x: px(300), y: px(240) };
  const knee = from(300, 240, thighDeg, 120);
  return { shoulder: from(300, 240, deg(180 + trunkDeg), 150), hip, knee, ankle: knee, heel: knee, toe: knee };
}

test.each([1, -1] as const)('sitting is a level thigh under a trunk that rises clearly, facing %s', (facing) => {
  for (const trunk of [90, 115, 70, 40]) {
    expect(inPosture(body(deg(trunk), deg(0), facing), 'upright')).toBe(true);
    expect(inPosture(body(deg(trunk), deg(-30), facing), 'upright')).toBe(true);
  }
});

test.each([1, -1] as const)('lying, also on pillows or head down, is not sitting, facing %s', (facing) => {
  for (const trunk of [0, 12, 20, -12, 180, -60]) expect(inPosture(body(deg(trunk), deg(0), facing), 'upright')).toBe(false);
});

test('standing is not sitting either, and neither is lying', () => {
  expect(inPosture(body(deg(90), deg(88)), 'upright')).toBe(false);
  expect(inPosture(body(deg(90), deg(88)), 'lying')).toBe(false);
});

test('lying is a level trunk, whatever the leg does', () => {
  for (const thigh of [0, -80]) expect(inPosture(body(deg(5), deg(thigh)), 'lying')).toBe(true);
});
