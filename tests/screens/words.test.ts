import { describe, expect, test } from 'vitest';
import { en } from '../../src/screens/words/en.ts';

/** Arguments that fit every function of the catalogue: numbers and texts both print. */
const ARGUMENTS = [2, 3, '4'] as const;

/** Every text of a catalogue with its place. */
function textsOf(words: unknown, place: string): readonly (readonly [string, string])[] {
  if (typeof words === 'string') return [[place, words]];
  if (typeof words === 'function') return textsOf(words(...ARGUMENTS), `${place}()`);
  if (typeof words !== 'object' || words === null) throw new Error(`a catalogue requires texts, got ${typeof words} at ${place}`);
  return Object.entries(words).flatMap(([key, inner]) => textsOf(inner, `${place}.${key}`));
}

const texts = textsOf(en, 'en');

describe('the English words', () => {
  test('the catalogue is found whole', () => {
    expect(texts.length).toBeGreaterThan(150);
  });

  test.each(texts)('%s says something', (_place, text) => {
    expect(text.trim()).toBe(text);
    expect(text).not.toBe('');
    expect(text).not.toMatch(/undefined|null|NaN|\[object|TODO/);
  });

  test('every problem says what is wrong and what to do, each in a whole sentence', () => {
    for (const [kind, words] of Object.entries(en.problems)) {
      const { title, todo } = words('');
      expect(title, kind).toMatch(/[.]$/);
      expect(todo, kind).toMatch(/[.]$/);
    }
  });

  test('one and many are told apart', () => {
    expect(en.set.small(1)).toBe('1 small one');
    expect(en.set.small(2)).toBe('2 small ones');
    expect(en.set.endedVoice(1)).toContain('1 repetition.');
  });

  test('nothing is called positive or negative', () => {
    for (const [place, text] of texts) expect(text, place).not.toMatch(/\b(positive|negative)\b/i);
  });
});
