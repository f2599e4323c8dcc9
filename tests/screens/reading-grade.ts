/** Parts of a text, counted as its readability formulas count them. */
interface Counted {
  readonly sentences: number;
  readonly words: number;
  readonly syllables: number;
}

const wordsOf = (text: string): readonly string[] => text.match(/\p{L}[\p{L}’'-]*|\d+/gu) ?? [];

/** Sentences end with a mark; a text without one is one. */
const sentencesOf = (text: string): readonly string[] =>
  text.split(/(?<=[.!?:;…])\s+/).filter((each) => wordsOf(each).length > 0);

/** Syllables of an English word, by its groups of vowels without a silent e. An estimate: some words are one off either way. */
export function englishSyllables(word: string): number {
  const plain = word.toLowerCase().replaceAll(/[^a-z]/g, '');
  if (plain.length <= 3) return 1;
  const spoken = plain.replace(/(?:[^laeiouy]es|[^aeiouy]ed|[^laeiouy]e)$/, (end) =>
    /[dt]ed$/.test(plain) || /(?:[csxz]|sh|ch|g)es$/.test(plain) ? end : '',
  );
  // In being and going, the last i begins a syllable of its own.
  return Math.max(1, spoken.replace(/(?<=[aeiouy])ing$/, '-ing').match(/[aeiouy]{1,2}/g)?.length ?? 1);
}

/** Syllables of a Spanish word: its groups of vowels, where two strong vowels or an accented weak one part a group. */
export function spanishSyllables(word: string): number {
  const groups = word.toLowerCase().match(/[aeiouáéíóúü]+/g) ?? [];
  const inGroup = (group: string) => 1 + (group.match(/(?<=[aeoáéó])[aeoáéóíú]|(?<=[íú])[aeoáéó]/g)?.length ?? 0);
  return Math.max(
    1,
    groups.map(inGroup).reduce((sum, n) => sum + n, 0),
  );
}

function count(texts: readonly string[], syllables: (word: string) => number): Counted {
  const words = texts.flatMap(wordsOf);
  return {
    sentences: texts.flatMap(sentencesOf).length,
    words: words.length,
    syllables: words.map(syllables).reduce((sum, n) => sum + n, 0),
  };
}

/**
 * Flesch-Kincaid grade level of texts taken together: years of school in the United States; grade 7 is read at twelve.
 * Kincaid, Fishburne, Rogers, Chissom 1975, Derivation of new readability formulas for Navy enlisted personnel; the figures from memory.
 */
export function fleschKincaid(texts: readonly string[]): number {
  const { sentences, words, syllables } = count(texts, englishSyllables);
  return 0.39 * (words / sentences) + 11.8 * (syllables / words) - 15.59;
}

/**
 * Fernández Huerta's reading ease of Spanish texts taken together, 0 to 100 and above: 60 to 70 is normal, 70 to 80 fairly easy.
 * J. Fernández Huerta 1959, Medidas sencillas de lecturabilidad, with syllables per word and words per sentence; the figures from memory.
 */
export function fernandezHuerta(texts: readonly string[]): number {
  const { sentences, words, syllables } = count(texts, spanishSyllables);
  return 206.84 - 60 * (syllables / words) - 1.02 * (words / sentences);
}
