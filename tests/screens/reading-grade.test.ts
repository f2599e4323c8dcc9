/** What is written for patients is understood by somebody of twelve: that is grade 7. */
import { describe, expect, test } from 'vitest';
import type { Language } from '../../src/screens/words/languages.ts';
import { textsOf, wholeOf } from './every-text.ts';
import { englishSyllables, fernandezHuerta, fleschKincaid, spanishSyllables } from './reading-grade.ts';

/** Parts of a catalogue whose screens and prints are the therapist's; all others are read by patients. Both read `problems`, `record` and `stored`. */
const THERAPISTS = new Set(['review', 'report', 'fhir', 'people', 'prescribe', 'desk', 'still', 'server', 'plan', 'handOver']);

/** A text of fewer words is a name or a button: a formula says nothing of it. */
const LEAST_WORDS = 5;
/** Nor of one alone that has fewer than these. Chosen. */
const LEAST_WORDS_ALONE = 8;

/** The most: grade 7 for what a screen says together, as asked of it; grade 8 for any one text. Chosen. */
const MOST = { together: 7, alone: 8 } as const;
/** The least of the Spanish scale: 70 and above is fairly easy or easier; 55 and above is normal (INFLESZ: Barrio-Cantalejo et al. 2008, from memory). */
const LEAST = { together: 70, alone: 55 } as const;

const lengthOf = (text: string) => text.split(/\s+/).length;

/** Texts by the part of the catalogue they stand in. */
function readTexts(language: Language, least: number): ReadonlyMap<string, readonly string[]> {
  const parts = new Map<string, readonly string[]>();
  for (const [place, text] of textsOf(wholeOf(language), '')) {
    const part = place.split('.')[1] ?? '';
    if (part !== 'locale' && lengthOf(text) >= least) parts.set(part, [...(parts.get(part) ?? []), text]);
  }
  return parts;
}

const patients = (language: Language, least: number) => [...readTexts(language, least)].filter(([part]) => !THERAPISTS.has(part));

describe('English', () => {
  test('each part of the words for patients is read at grade 7 or below', () => {
    const parts = patients('en', LEAST_WORDS);
    expect(parts.length).toBeGreaterThan(12);
    for (const [part, texts] of parts) expect(fleschKincaid(texts), part).toBeLessThanOrEqual(MOST.together);
    expect(fleschKincaid(parts.flatMap(([, texts]) => texts))).toBeLessThanOrEqual(MOST.together);
  });

  test('no text for patients is above grade 8', () => {
    const worst = patients('en', LEAST_WORDS_ALONE)
      .flatMap(([, texts]) => texts)
      .filter((text) => fleschKincaid([text]) > MOST.alone);
    expect(worst).toEqual([]);
  });
});

describe('Spanish', () => {
  test('each part of the words for patients is fairly easy or easier', () => {
    const parts = patients('es', LEAST_WORDS);
    expect(parts.length).toBeGreaterThan(12);
    for (const [part, texts] of parts) expect(fernandezHuerta(texts), part).toBeGreaterThanOrEqual(LEAST.together);
  });

  test('no text for patients is harder than normal', () => {
    const worst = patients('es', LEAST_WORDS_ALONE)
      .flatMap(([, texts]) => texts)
      .filter((text) => fernandezHuerta([text]) < LEAST.alone);
    expect(worst).toEqual([]);
  });
});

describe('the measures', () => {
  test.each([
    // Worked by hand: 6 words of 6 syllables; 16 words of 23 syllables.
    ['The cat sat on the mat.', -1.45],
    ['This sentence, taken as a reading passage unto itself, is being used to prove a point.', 7.61],
  ])('the grade of “%s” is %d', (text, grade) => {
    expect(fleschKincaid([text])).toBeCloseTo(grade, 2);
  });

  test('the ease of a Spanish sentence is as worked by hand', () => {
    // 5 words of 8 syllables: 206.84 - 60 * 1.6 - 1.02 * 5.
    expect(fernandezHuerta(['La pierna queda muy recta.'])).toBeCloseTo(105.74, 2);
  });

  test.each([
    ['repetition', 4],
    ['exercises', 4],
    ['measured', 2],
    ['counted', 2],
    ['table', 2],
    ['therapist', 3],
    ['going', 2],
    ['leg', 1],
  ])('%s has %d syllables', (word, syllables) => {
    expect(englishSyllables(word)).toBe(syllables);
  });

  test.each([
    ['pierna', 2],
    ['serie', 2],
    ['todavía', 4],
    ['cámara', 3],
    ['leer', 2],
    ['fisioterapeuta', 6],
  ])('%s has %d syllables in Spanish', (word, syllables) => {
    expect(spanishSyllables(word)).toBe(syllables);
  });
});
