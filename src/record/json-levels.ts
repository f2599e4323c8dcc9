/** How deep the brackets of a text go, those inside of its strings left out. Goes through the text once, and stops at `most`. */
export function levelsOf(text: string, most: number): number {
  let depth = 0;
  let deepest = 0;
  let inside = false;
  for (let i = 0; i < text.length && deepest <= most; i += 1) {
    const character = text[i];
    if (inside && character === '\\') i += 1;
    else if (character === '"') inside = !inside;
    else if (!inside && (character === '{' || character === '[')) {
      depth += 1;
      deepest = Math.max(deepest, depth);
    } else if (!inside && (character === '}' || character === ']')) depth -= 1;
  }
  return deepest;
}
