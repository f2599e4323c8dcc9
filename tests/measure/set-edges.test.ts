/** Movements at the edges of a set: under way when it is found ready. */
import { describe, expect, test } from 'vitest';
import { footTap } from '../../src/exercises/foot-tap.ts';
import { kneeStraighten } from '../../src/exercises/knee-straighten.ts';
import { legRaise } from '../../src/exercises/leg-raise.ts';
import { type BodyPose, lying, movementsAt, recording, sitting, specOf } from './pose-builder.ts';
import { kindsOf, runSet } from './set-runner.ts';

interface Case {
  readonly name: string;
  readonly exercise: typeof footTap;
  readonly bodyAt: (deg: number) => BodyPose;
  readonly ranges: readonly number[];
  readonly lastsMs: number;
  readonly everyMs: number;
}

const CASES: readonly Case[] = [
  {
    name: 'foot taps',
    exercise: footTap,
    bodyAt: (x) => sitting({ ankleDeg: x - 5 }),
    ranges: [12, 13, 11],
    lastsMs: 1000,
    everyMs: 1500,
  },
  {
    name: 'weak foot taps',
    exercise: footTap,
    bodyAt: (x) => sitting({ ankleDeg: x - 5 }),
    ranges: [6, 7, 6],
    lastsMs: 1000,
    everyMs: 1500,
  },
  {
    name: 'knees',
    exercise: kneeStraighten,
    bodyAt: (x) => sitting({ kneeDeg: 90 - x }),
    ranges: [60, 62, 58],
    lastsMs: 3000,
    everyMs: 3800,
  },
  {
    name: 'leg raises',
    exercise: legRaise,
    bodyAt: (x) => lying({ thighDeg: x }),
    ranges: [40, 42, 38],
    lastsMs: 3000,
    everyMs: 3800,
  },
];

describe.each(CASES)('$name', ({ exercise, bodyAt, ranges, lastsMs, everyMs }) => {
  test.each([420, 480, 540])(
    'that begin %i ms after the start, before the set is found ready, begin from the rest that made it ready',
    (firstMs) => {
      const run = runSet(
        specOf(exercise),
        recording({
          lastsMs: 1500 + everyMs * ranges.length,
          bodyAt: (t) => bodyAt(movementsAt(t, { firstMs, everyMs, lastsMs, ranges })),
          noisePx: 0.15,
          flow: true,
        }),
      );
      expect(kindsOf(run)).toEqual(['ready', ...ranges.map(() => 'rep')]);
      expect(run.events[0]?.tMs).toBeGreaterThan(firstMs);
      expect(run.result.reps.map((rep) => rep.flags)).toEqual(ranges.map(() => []));
      for (const reps of [run.result.reps, run.state.reps]) {
        reps.forEach((rep, i) => {
          expect(Math.abs(rep.rangeDeg - (ranges[i] as number))).toBeLessThan(0.04 * (ranges[i] as number) + 0.5);
        });
      }
    },
  );
});

test('a twitch that is over before the set is found ready does not count, live or afterwards', () => {
  const bodyAt = (t: number) =>
    sitting({
      ankleDeg:
        t < 1000
          ? movementsAt(t, { firstMs: 100, everyMs: 2000, lastsMs: 400, ranges: [3.5] })
          : movementsAt(t, { firstMs: 2000, everyMs: 1500, lastsMs: 1000, ranges: [12, 12] }),
    });
  const run = runSet(specOf(footTap), recording({ lastsMs: 6000, bodyAt, flow: true }));
  expect(kindsOf(run)).toEqual(['ready', 'rep', 'rep']);
  expect(run.result.reps.map((rep) => rep.flags)).toEqual([[], []]);
});
