import { expect, test } from 'vitest';
import { exerciseOf } from '../../src/exercises/catalogue.ts';
import { EXERCISE_IDS, isExerciseId } from '../../src/exercises/exercise.ts';

test('every exercise is found under its own name', () => {
  for (const id of EXERCISE_IDS) expect(exerciseOf(id).id).toBe(id);
});

test('only known names are exercises', () => {
  expect(isExerciseId('foot-tap')).toBe(true);
  expect(isExerciseId('Foot-Tap')).toBe(false);
  expect(isExerciseId('toString')).toBe(false);
});

test.each(EXERCISE_IDS.map((id) => exerciseOf(id)))('the rule of $id can be met', ({ rule, acceleration }) => {
  expect(rule.noticeDeg).toBeLessThan(rule.leastDeg);
  expect(rule.completeShare).toBeGreaterThan(0);
  expect(rule.completeShare).toBeLessThan(1);
  // Stillness lets the angle vary by less than a movement that counts, or a set could begin in the middle of one.
  expect(rule.stillDeg).toBeLessThanOrEqual(2 * rule.leastDeg);
  expect(rule.readyMs).toBeGreaterThan(rule.leastMs);
  expect(acceleration).toBeGreaterThan(0);
});

test.each(EXERCISE_IDS.map((id) => exerciseOf(id)))(
  'the angle of $id is told by the segments whose motion is followed',
  ({ angle, segments }) => {
    const needed = {
      'ankle-dorsiflexion': ['foot', 'shank'],
      'leg-elevation': ['thigh', 'shank'],
      'knee-flexion': ['thigh', 'shank'],
      'foot-elevation': ['foot'],
      'great-toe-extension': [],
    } as const;
    expect([...segments].sort()).toEqual([...needed[angle]].sort());
  },
);

test('foot taps as quick as healthy people make them pass the least time of a tap', () => {
  // 31.7 + 2 * 6.4 taps in 10 s (Numasawa et al. 2012, Spine 37:108): 225 ms each, four fifths of it out of the lowest tenth.
  expect(exerciseOf('foot-tap').rule.leastMs).toBeLessThan((0.8 * 10_000) / (31.7 + 2 * 6.4));
});
