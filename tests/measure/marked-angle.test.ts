import { describe, expect, test } from 'vitest';
import { kneeStraighten } from '../../src/exercises/knee-straighten.ts';
import { legRaise } from '../../src/exercises/leg-raise.ts';
import { markedAngle } from '../../src/measure/marked-angle.ts';
import { restLevel } from '../../src/measure/rest-level.ts';
import { deg, ms } from '../../src/units.ts';
import { lying, movementsAt, recording, sitting, specOf } from './pose-builder.ts';
import { runSet } from './set-runner.ts';

const raiseAt = (t: number) => movementsAt(t, { everyMs: 4000, lastsMs: 3000, ranges: [40, 50, 45] });

describe('an angle marked in a measured set', () => {
  test('is the angle then, and how far from rest that is', () => {
    const { result } = runSet(specOf(legRaise), recording({ lastsMs: 14_000, bodyAt: (t) => lying({ thighDeg: raiseAt(t) }) }));
    for (const atMs of [3000, 6200, 7000, 11_000]) {
      const mark = markedAngle(result.curve, ms(atMs), 1);
      expect(Math.abs(Number(mark?.fromRestDeg) - raiseAt(atMs)), `at ${atMs}`).toBeLessThan(2);
      expect(Math.abs(Number(mark?.angleDeg) - raiseAt(atMs)), `at ${atMs}`).toBeLessThan(2);
    }
  });

  test('in an exercise whose angle falls, further is more', () => {
    const bodyAt = (t: number) => sitting({ kneeDeg: 90 - raiseAt(t) });
    const { result } = runSet(specOf(kneeStraighten), recording({ lastsMs: 14_000, bodyAt }));
    const mark = markedAngle(result.curve, ms(7000), -1);
    expect(Math.abs(Number(mark?.fromRestDeg) - 50)).toBeLessThan(2);
    expect(Math.abs(Number(mark?.angleDeg) - 40)).toBeLessThan(2);
  });

  test('is none where nothing was measured about then', () => {
    const curve = { tMs: [0, 50, 100, 400, 800].map(ms), angleDeg: [deg(0), deg(0), deg(1), null, deg(30)] };
    expect(markedAngle(curve, ms(400), 1)).toBeNull();
    expect(markedAngle(curve, ms(800), 1)).toEqual({ fromRestDeg: 30, angleDeg: 30 });
  });
});

test('the rest is where the joint is lowest for a tenth of the time, in the direction of the movement', () => {
  const angles = [null, ...Array.from({ length: 20 }, () => deg(5)), ...Array.from({ length: 10 }, (_, i) => deg(10 + i))];
  expect(restLevel(angles, 1)).toBe(5);
  expect(
    restLevel(
      angles.map((a) => (a === null ? null : deg(-a))),
      -1,
    ),
  ).toBe(-5);
  expect(restLevel([null], 1)).toBeNull();
});

test('what is shown of the rest outlasts a gap in the middle of a movement', () => {
  const seen = recording({ lastsMs: 14_000, bodyAt: (t) => lying({ thighDeg: raiseAt(t) }) });
  // Nothing comes for a second while the leg is up.
  const cut = seen.filter(({ tMs }) => tMs < 6300 || tMs > 7300);
  const { views } = runSet(specOf(legRaise), cut);
  const after = views.filter((_, i) => Number(cut[i]?.tMs) > 7300 && Number(cut[i]?.tMs) < 8000);
  expect(after.length).toBeGreaterThan(10);
  for (const { restDeg } of after) expect(Math.abs(Number(restDeg))).toBeLessThan(2);
});
