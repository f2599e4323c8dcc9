import type { Narrative } from '@medplum/fhirtypes';

/** What XML 1.0 has no way to write: control characters, halves of surrogate pairs, and two that are no characters. */
const NOT_IN_XML = /[^\t\n\r\u{20}-\u{d7ff}\u{e000}-\u{fffd}\u{10000}-\u{10ffff}]/gu;

/** A text as XHTML has it. */
const escaped = (text: string): string =>
  text
    .replace(NOT_IN_XML, ' ')
    .replaceAll('&', '&amp;')
    .replaceAll('<', '&lt;')
    .replaceAll('>', '&gt;')
    .replaceAll('"', '&quot;');

/** One line of a text for people: what it is, and what is said of it; null: the line is a sentence of its own. */
export type TextLine = readonly [name: string | null, said: string];

/** A text for people who see a resource in a viewer that does not know it: made from the resource alone, plain, in English. */
export function narrative(title: string, lines: readonly TextLine[]): Narrative {
  const items = lines.map(([name, said]) => `<li>${name === null ? '' : `${escaped(name)}: `}${escaped(said)}</li>`);
  const list = items.length > 0 ? `<ul>${items.join('')}</ul>` : '';
  return {
    status: 'generated',
    div: `<div xmlns="http://www.w3.org/1999/xhtml" lang="en" xml:lang="en"><p><b>${escaped(title)}</b></p>${list}</div>`,
  };
}
