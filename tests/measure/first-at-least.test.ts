import fc from 'fast-check';
import { expect, test } from 'vitest';
import { firstAtLeast } from '../../src/measure/first-at-least.ts';

test('it is the first one that a look at each would find, also among equal times', () => {
  fc.assert(
    fc.property(fc.array(fc.integer({ min: 0, max: 20 })), fc.integer({ min: -1, max: 21 }), (unordered, t) => {
      const list = unordered.sort((a, b) => a - b).map((tMs) => ({ tMs }));
      const found = list.findIndex(({ tMs }) => tMs >= t);
      expect(firstAtLeast(list, t, ({ tMs }) => tMs)).toBe(found < 0 ? list.length : found);
    }),
  );
});
