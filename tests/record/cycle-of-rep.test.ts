import fc from 'fast-check';
import { expect, test } from 'vitest';
import { cycleOfRep } from '../../src/record/cycle-of-rep.ts';
import { ms } from '../../src/units.ts';
import { aCycle } from './glide-builders.ts';

const cycle = (startMs: number, endMs: number) => aCycle(1, 'slide', { startMs: ms(startMs), endMs: ms(endMs) });
const rep = (startMs: number, endMs: number) => ({ startMs: ms(startMs), endMs: ms(endMs) });

test('a repetition is the cycle of which half of the shorter lies in the other', () => {
  const one = cycle(1000, 3000);
  expect(cycleOfRep(rep(1200, 2700), [one])).toBe(one);
  expect(cycleOfRep(rep(500, 9000), [one])).toBe(one);
  expect(cycleOfRep(rep(0, 2000), [one])).toBe(one);
  expect(cycleOfRep(rep(0, 1999), [one])).toBeNull();
  expect(cycleOfRep(rep(3000, 4000), [one])).toBeNull();
});

test('of two cycles it is the one with which it shares most time', () => {
  const [first, second] = [cycle(0, 1000), cycle(1000, 3000)];
  expect(cycleOfRep(rep(200, 2600), [first, second])).toBe(second);
  expect(cycleOfRep(rep(200, 2600), [second, first])).toBe(second);
});

test('without cycles, and for a repetition without length, there is none', () => {
  expect(cycleOfRep(rep(0, 1000), [])).toBeNull();
  expect(cycleOfRep(rep(500, 500), [cycle(0, 1000)])).toBeNull();
});

test('shifting or stretching time changes nothing', () => {
  const time = fc.integer({ min: 0, max: 10_000 });
  const span = fc.tuple(time, time).map(([a, b]) => [Math.min(a, b), Math.max(a, b)] as const);
  fc.assert(
    fc.property(span, span, fc.integer({ min: -5000, max: 5000 }), fc.integer({ min: 1, max: 8 }), (a, b, by, factor) => {
      const moved = ([from, to]: readonly [number, number]) => [factor * (from + by), factor * (to + by)] as const;
      expect(cycleOfRep(rep(...moved(a)), [cycle(...moved(b))]) === null).toBe(cycleOfRep(rep(...a), [cycle(...b)]) === null);
    }),
  );
});
