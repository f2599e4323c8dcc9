import fc from 'fast-check';
import { expect, test } from 'vitest';
import { levelsOf } from '../../src/record/json-levels.ts';

/** How deep a value goes, told by the value. */
const depthOf = (value: unknown): number =>
  typeof value === 'object' && value !== null ? 1 + Math.max(0, ...Object.values(value).map(depthOf)) : 0;

test('a text goes as deep as what it says, whatever stands in its strings', () => {
  const text = fc.string({ unit: fc.constantFrom('[', ']', '{', '}', '"', '\\', 'a', '\n', '\u2028') });
  const { tree } = fc.letrec((tie) => ({
    tree: fc.oneof({ maxDepth: 5 }, text, fc.integer(), fc.array(tie('tree')), fc.dictionary(text, tie('tree'))),
  }));
  fc.assert(fc.property(tree, (value) => levelsOf(JSON.stringify(value), 100) === depthOf(value)));
});

test('it is not looked further than to the first level too many', () => {
  expect(levelsOf('['.repeat(50_000), 16)).toBe(17);
  expect(levelsOf('"[[[', 16)).toBe(0);
});
