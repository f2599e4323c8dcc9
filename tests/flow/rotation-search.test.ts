import { expect, test } from 'vitest';
import type { Grey } from '../../src/flow/grey.ts';
import { alignPatch } from '../../src/flow/patch-alignment.ts';
import { prepareTemplate } from '../../src/flow/patch-template.ts';
import { still } from '../../src/flow/plane-motion.ts';
import { buildPyramid } from '../../src/flow/pyramid.ts';
import { searchRotation } from '../../src/flow/rotation-search.ts';
import { deg } from '../../src/units.ts';
import { ellipseMask, motionOf, render, texture } from './synthetic-picture.ts';

const pyramid = (picture: Grey) => buildPyramid(picture, 3);
const turned = (rotation: number, dx = 0, dy = 0) => render(texture(3), 200, 160, { motion: motionOf(rotation, dx, dy, 90, 80) });
const templateOf = (rest: Grey) => {
  const template = prepareTemplate(pyramid(rest), ellipseMask(rest, 90, 80, 45, 25));
  if (!template.ok) throw new Error(`expected a template, got ${JSON.stringify(template.error)}`);
  return template.value;
};
const template = templateOf(turned(0));

test.each([-27, -13.5, 0, 8, 26])(
  'a turn of %d degrees is found within 1.5 degrees and 2 px, well ahead of the rest',
  (rotation) => {
    const found = searchRotation(template, pyramid(turned(rotation, 9, -7)), still(90, 80));
    if (!found.ok) throw new Error(`expected a pose, got ${found.error.kind}`);
    const { best, second } = found.value;
    expect(Math.abs(best.motion.rotationDeg - rotation)).toBeLessThan(1.5);
    expect(Math.hypot(best.motion.shiftX - 9, best.motion.shiftY + 7)).toBeLessThan(2);
    expect(best.zncc - (second?.zncc ?? -1)).toBeGreaterThan(0.3);
  },
);

test('a turn beyond the reach of alignment alone is recovered from the search', () => {
  const picture = pyramid(turned(45, 10, -8));
  const found = searchRotation(template, picture, still(90, 80), { rotationRangeDeg: deg(60) });
  const refined = found.ok ? alignPatch(template, picture, found.value.best.motion) : undefined;
  expect(refined?.ok && Math.abs(refined.value.motion.rotationDeg - 45)).toBeLessThan(0.1);
});

test('the search is about its start', () => {
  const found = searchRotation(template, pyramid(turned(40)), motionOf(35, 0, 0, 90, 80), { rotationRangeDeg: deg(9) });
  expect(found.ok && Math.abs(found.value.best.motion.rotationDeg - 40)).toBeLessThan(1.5);
});

test('a pattern that looks the same after a third of a turn shows a second pose nearly as good', () => {
  const trefoil = (rotation: number) =>
    render(
      (x, y) =>
        120 +
        50 *
          Math.cos(3 * (Math.atan2(y - 80, x - 90) - (rotation * Math.PI) / 180)) *
          Math.exp(-(((Math.hypot(x - 90, y - 80) - 20) / 12) ** 2)),
      200,
      160,
    );
  const rest = trefoil(0);
  const round = prepareTemplate(pyramid(rest), ellipseMask(rest, 90, 80, 36, 36));
  if (!round.ok) throw new Error(`expected a template, got ${round.error.kind}`);
  const found = searchRotation(round.value, pyramid(trefoil(4)), still(90, 80), { rotationRangeDeg: deg(132) });
  if (!found.ok) throw new Error(`expected a pose, got ${found.error.kind}`);
  const { best, second } = found.value;
  expect(best.zncc - (second?.zncc ?? -1)).toBeLessThan(0.05);
  const apart = Math.abs(best.motion.rotationDeg - (second?.motion.rotationDeg ?? best.motion.rotationDeg));
  expect(Math.abs((apart % 120) - 60)).toBeGreaterThan(54);
  expect(apart).toBeGreaterThan(100);
});

test('a blank scores nothing, and a place off the picture is refused', () => {
  const blank = searchRotation(template, pyramid(render(() => 77, 200, 160)), still(90, 80));
  expect(blank.ok && blank.value.best.zncc).toBe(0);
  expect(searchRotation(template, pyramid(turned(0)), motionOf(0, 400, 0, 90, 80))).toMatchObject({
    ok: false,
    error: { kind: 'outside' },
  });
});
