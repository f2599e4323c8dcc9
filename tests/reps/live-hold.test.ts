import { expect, test } from 'vitest';
import { startCounter, stepCounter } from '../../src/reps/live-counter.ts';
import { liveHold } from '../../src/reps/live-hold.ts';
import { deg, ms } from '../../src/units.ts';
import { RULE } from './movement-builder.ts';

/** What the hold reads at each moment of a movement, one sample every 100 ms. */
function holdsOf(angles: readonly number[]): readonly (number | null)[] {
  let state = startCounter(ms(0), deg(angles[0] as number));
  return angles.map((angle, i) => {
    [state] = stepCounter(state, ms(i * 100), deg(angle), RULE);
    return liveHold(state);
  });
}

const UP = [0, 0, 4, 8, 12];

test('nothing is held at rest, on the way up it has hardly begun', () => {
  const holds = holdsOf([...UP, 12]);
  expect(holds.slice(0, 2)).toEqual([null, null]);
  expect(holds.at(-2)).toBe(0);
  expect(holds.at(-1)).toBe(100);
});

test('a hold grows with the time at the top, also where the leg tires a little', () => {
  const held = Array.from({ length: 30 }, (_, i) => 12 - i * 0.1);
  expect(holdsOf([...UP, ...held]).at(-1)).toBe(3000);
});

test('on the way down nothing is held any more', () => {
  const holds = holdsOf([...UP, 12, 12, 12, 7, 3, 0]);
  expect(holds.slice(-4)).toEqual([300, null, null, null]);
});

test('a clearly higher top begins the hold anew', () => {
  const holds = holdsOf([...UP, 12, 12, 12, 16, 16]);
  expect(holds.slice(-3)).toEqual([300, 0, 100]);
});
