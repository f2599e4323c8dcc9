/** Most characters of what a file said that a sentence repeats. Chosen. */
const MOST = 300;

/**
 * What stood in a file, for a sentence in a terminal: on one line, without characters that steer the terminal or turn the writing round, and not longer than some
 * words.
 */
export function plainWords(text: string): string {
  const plain = text.replace(/[\p{Cc}\p{Cf}\p{Cs}\p{Zl}\p{Zp}]+/gu, ' ');
  return plain.length > MOST ? `${Array.from(plain).slice(0, MOST).join('')} …` : plain;
}
