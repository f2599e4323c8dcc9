import { describe, expect, test } from 'vitest';
import { en } from '../../src/screens/words/en.ts';
import { es } from '../../src/screens/words/es.ts';
import { CATALOGUES, LANGUAGES, languageOf } from '../../src/screens/words/languages.ts';
import type { Words } from '../../src/screens/words/words.ts';

/** Arguments that fit every function of a catalogue: numbers and texts both print. */
const ARGUMENTS = [2, 3, '4'] as const;

/** Every text of a catalogue with its place. */
function textsOf(words: unknown, place: string, given: readonly unknown[] = ARGUMENTS): readonly (readonly [string, string])[] {
  if (typeof words === 'string') return [[place, words]];
  if (typeof words === 'function') return textsOf(words(...given), `${place}()`, given);
  if (typeof words !== 'object' || words === null) throw new Error(`a catalogue requires texts, got ${typeof words} at ${place}`);
  return Object.entries(words).flatMap(([key, inner]) => textsOf(inner, `${place}.${key}`, given));
}

describe.each(LANGUAGES)('the catalogue %s', (language) => {
  const words: Words = CATALOGUES[language];
  const texts = textsOf(words, language);

  test('is found whole', () => {
    expect(texts.length).toBeGreaterThan(400);
    expect(words.locale).toBe(language);
  });

  test.each(texts)('%s says something', (_place, text) => {
    expect(text.trim()).toBe(text);
    expect(text).not.toBe('');
    expect(text).not.toMatch(/undefined|null|NaN|\[object|TODO| {2}/);
  });

  test('every problem says what is wrong and what to do, each in a whole sentence', () => {
    for (const [kind, problem] of Object.entries(words.problems)) {
      const { title, todo } = problem('');
      expect(title, kind).toMatch(/[.]$/);
      expect(todo, kind).toMatch(/[.]$/);
    }
  });

  test('one and many are told apart', () => {
    for (const say of [words.set.small, words.set.endedVoice, words.day.dose, words.plan.setsADay, words.day.proposal.good]) {
      const [one, two] = [say(1, 0), say(2, 0)].map((text) => text.replaceAll(/\d/g, '#'));
      expect(one).not.toBe(two);
    }
  });

  test('nothing is called positive or negative', () => {
    for (const [place, text] of texts) expect(text, place).not.toMatch(/\b(positiv|negativ)/i);
  });
});

test('small ones and repetitions are counted as people say it', () => {
  expect(en.set.small(1)).toBe('1 small one');
  expect(en.set.small(2)).toBe('2 small ones');
  expect(en.set.endedVoice(1)).toContain('1 repetition.');
  expect(es.set.endedVoice(1)).toContain('1 repetición.');
  expect(es.set.endedVoice(2)).toContain('2 repeticiones.');
});

describe('Spanish against English', () => {
  const english = new Map(textsOf(en, ''));
  const spanish = new Map(textsOf(es, ''));

  /** What reads the same in both: names, units, what is only made of numbers. */
  const SAME = /^(Evenside|es|en|No|Normal|s|[\d\s°±%,.:;()]*|4:? ?s|\d+ s)$/;

  test('has the same texts in the same places', () => {
    expect([...spanish.keys()]).toEqual([...english.keys()]);
  });

  test.each([...spanish].filter(([place]) => !place.endsWith('.locale')))('%s is translated', (place, text) => {
    if (!SAME.test(text)) expect(text).not.toBe(english.get(place));
  });

  test('says every number and name that English says', () => {
    const MARKS = ['⟦a⟧', '⟦b⟧', '⟦c⟧'];
    const [marked, wanted] = [es, en].map((words) => new Map(textsOf(words, '', MARKS)));
    const found = (text = '') => MARKS.filter((mark) => text.includes(mark));
    for (const [place, text] of wanted as Map<string, string>) expect(found(marked?.get(place)), place).toEqual(found(text));
  });

  test('asks and exclaims with both of its marks', () => {
    for (const [place, text] of spanish) {
      expect(text.split('¿').length, place).toBe(text.split('?').length);
      expect(text.split('¡').length, place).toBe(text.split('!').length);
    }
  });

  test('speaks to the person as usted throughout', () => {
    // Common forms of the familiar address; \b does not know accented letters, so whole words are cut out first.
    const familiar = new Set([
      'tú',
      'tu',
      'tus',
      'te',
      'ti',
      'tuyo',
      'tuya',
      'puedes',
      'tienes',
      'quieres',
      'siéntate',
      'túmbate',
      'haz',
    ]);
    for (const [place, text] of spanish) {
      const cut = text.toLowerCase().split(/[^\p{L}]+/u);
      expect(
        cut.filter((word) => familiar.has(word)),
        place,
      ).toEqual([]);
    }
  });
});

test.each([
  [null, ['es-MX', 'en'], 'es'],
  [null, ['fr', 'de-AT', 'ES'], 'es'],
  [null, ['fr'], 'en'],
  [null, [], 'en'],
  ['en', ['es'], 'en'],
] as const)('chosen %s in a browser that prefers %j: %s', (chosen, preferred, language) => {
  expect(languageOf(chosen, preferred)).toBe(language);
});
