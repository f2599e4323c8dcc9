import { expect, test } from 'vitest';
import { exerciseOf } from '../../src/exercises/catalogue.ts';
import { finishSet, startSet, stepSet } from '../../src/measure/set.ts';
import type { SetResult } from '../../src/measure/set-result.ts';
import { LANDMARK } from '../../src/pose/landmarks.ts';
import { ms, px } from '../../src/units.ts';
import { landmarksOf, SIZE, sitting } from './pose-builder.ts';

/** A knee that straightens twice by 40 degrees; in the frames that `astray` picks the ankle's point has jumped up to the knee and beyond. */
function measured(astray: (i: number) => boolean): SetResult {
  let state = startSet({
    exercise: exerciseOf('knee-straighten'),
    side: 'left',
    size: SIZE,
    targetReps: null,
    endsItself: false,
  });
  for (let i = 0; i < 180; i++) {
    const phase = i < 45 ? 0 : ((i - 45) % 60) / 60;
    const kneeDeg = 90 - 40 * Math.sin(Math.PI * phase) ** 2 * (i < 165 ? 1 : 0);
    const landmarks = landmarksOf(sitting({ kneeDeg })).map((p, k, all) => {
      const knee = all[LANDMARK.leftKnee];
      return astray(i) && k === LANDMARK.leftAnkle && knee ? { ...p, x: px(knee.x + 30), y: px(knee.y - 25) } : p;
    });
    state = stepSet(state, { tMs: ms((i * 1000) / 30), landmarks, motion: null, brightness: 100, camera: null }).state;
  }
  return finishSet(state);
}

test('points that jump away for a few frames are left out, and the ranges stay as they were', () => {
  const clean = measured(() => false);
  const jumping = measured((i) => i > 50 && i % 20 < 3);
  expect(clean.count).toBe(2);
  expect(jumping.count).toBe(2);
  jumping.reps.forEach((rep, i) => {
    expect(Math.abs(rep.rangeDeg - (clean.reps[i]?.rangeDeg ?? Number.NaN))).toBeLessThan(1);
  });
});

test('a set in which points jump often says so, one without does not', () => {
  expect(measured((i) => i > 50 && i % 10 < 2).quality.warnings).toContain('points-jumped');
  expect(measured(() => false).quality.warnings).not.toContain('points-jumped');
});
