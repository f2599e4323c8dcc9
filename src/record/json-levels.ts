/** Character codes of JSON's brackets, of what surrounds its strings and of what makes the next character part of one. */
const [QUOTE, BACKSLASH] = [0x22, 0x5c];
const [OPEN_LIST, CLOSE_LIST, OPEN_OBJECT, CLOSE_OBJECT] = [0x5b, 0x5d, 0x7b, 0x7d];

/**
 * How deep the brackets of a text go, those inside of its strings left out. Goes through the text once, and stops at `most`. By codes, most of which are
 * below all brackets: long texts are mostly numbers.
 */
export function levelsOf(text: string, most: number): number {
  const { length } = text;
  let depth = 0;
  let deepest = 0;
  for (let i = 0; i < length && deepest <= most; i += 1) {
    const code = text.charCodeAt(i);
    if (code === QUOTE) {
      for (i += 1; i < length; i += 1) {
        const inside = text.charCodeAt(i);
        if (inside === QUOTE) break;
        if (inside === BACKSLASH) i += 1;
      }
    } else if (code < OPEN_LIST) continue;
    else if (code === OPEN_LIST || code === OPEN_OBJECT) {
      depth += 1;
      if (depth > deepest) deepest = depth;
    } else if (code === CLOSE_LIST || code === CLOSE_OBJECT) depth -= 1;
  }
  return deepest;
}
