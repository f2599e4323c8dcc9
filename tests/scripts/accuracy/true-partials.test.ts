import { expect, test } from 'vitest';
import { truePartials } from '../../../scripts/accuracy/true-partials.ts';
import { clip, trueRep } from './truth-builder.ts';

test.each(['foot-tap', 'leg-raise', 'knee-straighten'] as const)(
  'movements between those that count are partial ones: %s',
  (exercise) => {
    const reps = [trueRep(1000, 2000, 15), trueRep(4000, 5000, 15)];
    const partials = [trueRep(2500, 3200, 4), trueRep(6000, 6700, 4)];
    expect(truePartials(clip(exercise, reps, partials))).toBe(2);
    expect(truePartials(clip(exercise, reps))).toBe(0);
  },
);

test('a rise that no one would call a movement is none', () => {
  expect(truePartials(clip('foot-tap', [trueRep(1000, 2000, 15)], [trueRep(2500, 3200, 2)]))).toBe(0);
});
