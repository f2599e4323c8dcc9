import { expect, test } from 'vitest';
import { nerveGlide } from '../../src/exercises/nerve-glide.ts';
import type { Observation } from '../../src/measure/observation.ts';
import { LANDMARK, type Landmark, type LandmarkName, type Side } from '../../src/pose/landmarks.ts';
import { landmarksOf, lying, recording, specOf } from './pose-builder.ts';
import { kindsOf, runSet } from './set-runner.ts';

const PARTS = ['Knee', 'Ankle', 'Heel', 'Toe'] as const;
const points = (foot: number) => (tMs: number) =>
  tMs < 2000 ? 0 : foot * ((1 - Math.cos((2 * Math.PI * (tMs - 2000)) / 2500)) / 2);
/** Four glides of the left leg's foot, the leg at 45 degrees. */
const glides = recording({
  lastsMs: 12_000,
  bodyAt: (tMs) => lying({ thighDeg: 45, ankleDeg: -points(30)(tMs) }),
  flow: true,
});
const flat = landmarksOf(lying({ thighDeg: 0 }));

/** One leg's points from the knee on are put elsewhere. */
const withLeg = (observations: readonly Observation[], side: Side, to: (landmarks: readonly Landmark[]) => readonly Landmark[]) =>
  observations.map((seen) => {
    if (!seen.landmarks) return seen;
    const from = to(seen.landmarks);
    const own = new Set<number>(PARTS.map((part) => LANDMARK[`${side}${part}` as LandmarkName]));
    return {
      ...seen,
      landmarks: seen.landmarks.map((p, i) => (own.has(i) ? { ...p, x: from[i]?.x ?? p.x, y: from[i]?.y ?? p.y } : p)),
    };
  });
/** The other leg lies. */
const held = withLeg(glides, 'right', () => flat);
/** The leg asked for lies, and the other one is held up. */
const otherUp = withLeg(glides, 'left', () => flat);

test('the leg asked for held up is measured', () => {
  const { result, events } = runSet(specOf(nerveGlide), held);
  expect(events.some(({ kind }) => kind === 'ready')).toBe(true);
  expect(result.quality.warnings).not.toContain('other-leg-up');
  expect(result.count).toBe(4);
  expect(Math.abs((result.glide?.legHeld?.medianDeg ?? 0) - 45)).toBeLessThan(5);
});

test('the other leg held up is told before the set, which does not begin', () => {
  const run = runSet(specOf(nerveGlide), otherUp);
  expect(kindsOf(run)).toEqual([]);
  expect(run.views.at(-1)?.advice).toEqual(['other-leg-up']);
});

test('of the other leg no figure is given, and the reason is named', () => {
  const { result } = runSet(specOf(nerveGlide), otherUp);
  expect(result).toMatchObject({ count: 0, reps: [], framesUsed: 0, summary: null, quality: { warnings: ['other-leg-up'] } });
  expect(result.glide).toMatchObject({ pattern: 'unclear', cycles: [], legHeld: null, headRangeDeg: null });
});

test('points that lie between the legs for most of a set do not pull the leg down: the picture\u2019s motion goes on with it', () => {
  const halfway = (landmarks: readonly Landmark[]) => {
    const at = landmarksOf(lying({ thighDeg: 20 }));
    return landmarks.map((p, i) => ({ ...p, x: at[i]?.x ?? p.x, y: at[i]?.y ?? p.y }));
  };
  const astray = withLeg(held, 'left', halfway);
  const mixed = held.map((seen, i) => (i % 5 < 2 || seen.tMs < 2000 ? seen : (astray[i] as Observation)));
  const { result } = runSet(specOf(nerveGlide), mixed);
  expect(result.count).toBe(4);
  expect(Math.abs((result.glide?.legHeld?.medianDeg ?? 0) - 45)).toBeLessThan(5);
});
