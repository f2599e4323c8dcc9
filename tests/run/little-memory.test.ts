import { expect, test } from 'vitest';
import { littleMemory } from '../../src/run/little-memory.ts';

test('4 GB and less is little memory; 8 is not, and neither is what the browser does not tell', () => {
  expect([2, 4, 8].map((deviceMemory) => littleMemory({ deviceMemory }))).toEqual([true, true, false]);
  expect(littleMemory({})).toBe(false);
});
