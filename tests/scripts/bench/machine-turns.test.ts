import { expect, test } from 'vitest';
import { machineTurns } from '../../../scripts/bench/machine-turns.ts';
import { footTap } from '../../../src/exercises/foot-tap.ts';
import { movementsAt, recording, sitting } from '../../measure/pose-builder.ts';

const pictures = recording({
  fps: 50,
  lastsMs: 2000,
  bodyAt: (t) => sitting({ ankleDeg: movementsAt(t, { everyMs: 1000, lastsMs: 800, ranges: [12, 12] }) }),
  flow: true,
});
const told = (wholeMs: number, betweenMs: number, from = 0, seen = pictures) =>
  machineTurns(seen, footTap.segments, { wholeMs, betweenMs }, from);

test('a machine that is quicker than the camera looks at every picture whole', () => {
  const all = told(15, 1);
  expect(all.map(({ seen }) => seen)).toEqual(pictures);
  for (const { seen, atMs } of all) expect(atMs).toBeCloseTo(seen.tMs + 15);
});

test('a slower one looks at the newest picture whole and follows the leg in those before it', () => {
  const all = told(45, 0);
  expect(all.map(({ seen }) => seen.tMs)).toEqual(pictures.slice(0, all.length).map((seen) => seen.tMs));
  // Free at 45 ms: the picture of 40 ms is whole, that of 20 is one in between.
  expect(all.slice(0, 5).map(({ seen }) => seen.landmarks !== null)).toEqual([true, false, true, false, true]);
});

test('nothing is told before it has been worked on', () => {
  for (const { seen, atMs } of told(70, 4)) expect(atMs).toBeGreaterThan(seen.tMs + (seen.landmarks ? 70 : 4) - 1e-9);
});

test('a picture in between in which the leg was not followed tells nothing', () => {
  const lost = pictures.map((seen) => (seen.motion ? { ...seen, motion: { ...seen.motion, foot: null } } : seen));
  expect(told(45, 0, 0, lost).every(({ seen }) => seen.landmarks !== null)).toBe(true);
});

test('begun later, its turns fall elsewhere', () => {
  const whole = (from: number) => told(45, 0, from).flatMap(({ seen }) => (seen.landmarks ? [seen.tMs] : []));
  expect(whole(25)[0]).toBe(pictures[1]?.tMs);
  expect(whole(25)).not.toEqual(whole(0));
});
