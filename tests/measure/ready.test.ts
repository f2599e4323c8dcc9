import { expect, test } from 'vitest';
import { readyIndex } from '../../src/measure/ready.ts';
import { deg, ms } from '../../src/units.ts';

const RULE = { readyMs: ms(600), stillDeg: deg(4) };
const FRAME_MS = 100;
const times = (angles: readonly (number | null)[]) => angles.map((_, i) => i * FRAME_MS);
const ready = (angles: readonly (number | null)[], foundMs: number | null = null) =>
  readyIndex(times(angles), angles, RULE, foundMs === null ? null : ms(foundMs));
const many = (count: number, angle: (i: number) => number | null) => Array.from({ length: count }, (_, i) => angle(i));
const moving = (i: number) => 10 * Math.sin(i);

test('where the set was found ready, counting begins there', () => {
  expect(
    ready(
      many(50, () => 0),
      1500,
    ),
  ).toBe(15);
});

test('otherwise where the angle has been still for long enough', () => {
  // The last of the moving frames happens to lie near the rest.
  expect(ready([...many(9, moving), 9, ...many(20, () => 3)])).toBe(16);
});

test('frames without the leg break the stillness', () => {
  expect(ready([...many(5, () => 0), null, ...many(20, () => 0)])).toBe(12);
});

test('someone who never holds still is measured from their first frame in place', () => {
  expect(ready([null, null, ...many(50, moving)])).toBe(2);
  expect(ready([null, ...many(10, moving)])).toBe(1);
});

test('fidgeting before a set that was found ready is not measured, exercising is', () => {
  expect(ready(many(100, moving), 5000)).toBe(50);
  expect(ready(many(100, moving), 9000)).toBe(0);
});

test('nothing measured, nothing ready', () => {
  expect(ready(many(10, () => null))).toBeNull();
  expect(ready([])).toBeNull();
});
