import { describe, expect, test } from 'vitest';
import { en } from '../../src/screens/words/en.ts';
import { es } from '../../src/screens/words/es.ts';
import { LANGUAGES, languageOf, loadWords } from '../../src/screens/words/languages.ts';
import type { Words } from '../../src/screens/words/words.ts';
import { textsOf, wholeOf } from './every-text.ts';

const CATALOGUES = { en, es };

describe.each(LANGUAGES)('the catalogue %s', (language) => {
  const words: Words = CATALOGUES[language];
  const texts = textsOf(wholeOf(language), language);

  test('is what is loaded when it is to be spoken', async () => {
    expect(await loadWords(language)).toBe(words);
  });

  test('is found whole', () => {
    expect(texts.length).toBeGreaterThan(400);
    expect(words.locale).toBe(language);
  });

  test('every text says something', () => {
    for (const [place, text] of texts) {
      expect(text.trim(), place).toBe(text);
      expect(text, place).not.toBe('');
      expect(text, place).not.toMatch(/undefined|null|NaN|\[object|TODO| {2}/);
    }
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
  const english = new Map(textsOf(wholeOf('en'), ''));
  const spanish = new Map(textsOf(wholeOf('es'), ''));

  /** What reads the same in both: names, units, what is only made of numbers. */
  const SAME = /^(Evenside|es|en|No|Normal|s|[\d\s°±%,.:;()]*|4:? ?s|\d+ s)$/;

  test('has the same texts in the same places', () => {
    expect([...spanish.keys()]).toEqual([...english.keys()]);
  });

  test('every text is translated', () => {
    const same = [...spanish].filter(([place, text]) => text === english.get(place) && !SAME.test(text));
    expect(same.filter(([place]) => !place.endsWith('.locale'))).toEqual([]);
  });

  // Every branch: plain marks, then one and none, which have sentences of their own, and a value that is missing.
  test.each([
    ['names', ['⟦a⟧', '⟦b⟧', '⟦c⟧']],
    ['one', [1, '⟦b⟧', '⟦c⟧']],
    ['one day', ['⟦a⟧', '⟦b⟧', 1]],
    ['no day', ['⟦a⟧', '⟦b⟧', 0]],
    ['nothing held', ['⟦a⟧', 0, '⟦c⟧']],
    ['no second value', ['⟦a⟧', null, '⟦c⟧']],
    ['no third value', ['⟦a⟧', '⟦b⟧', null]],
  ] as const)('says every number and name that English says, given %s', (_case, given) => {
    const marks = given.filter((value) => typeof value === 'string');
    const found = (text = '') => marks.filter((mark) => text.includes(mark));
    const said = new Map(textsOf(wholeOf('es'), '', given));
    for (const [place, text] of textsOf(wholeOf('en'), '', given)) expect(found(said.get(place)), place).toEqual(found(text));
  });

  test('a text of danger keeps every word of urgency', () => {
    const URGENT = [
      [/\bnow\b(?! on)/gi, /\bahora\b/gi],
      [/\btoday\b/gi, /\bhoy\b/gi],
      [/same day/gi, /mismo día/gi],
      [/at night/gi, /de noche/gi],
      [/emergency department/gi, /\burgencias\b/gi],
      [/local emergency/gi, /local de emergencias/gi],
      [/\bboth legs\b/gi, /las dos piernas/gi],
      [/cauda equina/gi, /cauda equina/gi],
      [/\bnumb(?!er)/gi, /\badormec|sensibilidad/gi],
      [/\bgenitals\b/gi, /\bgenitales\b/gi],
      [/\bcontrol\b/gi, /\bcontrol\b/gi],
    ] as const;
    const danger = [...english].filter(([place]) => /^\.(safety|day\.stop|day\.questions\.flags)\b/.test(place));
    const times = (text: string, word: RegExp) => (text.match(word) ?? []).length;
    for (const [word, wanted] of URGENT) {
      const used = danger.filter(([, text]) => times(text, word) > 0);
      expect(used.length, `${word} in English`).toBeGreaterThan(0);
      for (const [place, text] of used)
        expect(times(spanish.get(place) ?? '', wanted), `${wanted} at ${place}`).toBeGreaterThanOrEqual(times(text, word));
    }
  });

  test('going to hospital is as urgent as calling', () => {
    expect(es.safety.lead).toMatch(/vaya ahora mismo a urgencias o llame ahora mismo/i);
    expect(es.day.stop.todo.now).toMatch(/llame ahora mismo .* o vaya ahora mismo a urgencias/i);
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
