// @vitest-environment jsdom
import fc from 'fast-check';
import { expect, test } from 'vitest';
import { narrative } from '../../src/fhir/xhtml.ts';
import { anyRecords } from './any-records.ts';
import { preparedOf } from './context.ts';
import { livedRecords } from './lived-records.ts';

/** Elements that a text for people may have (FHIR R4, Narrative: the basic HTML formatting elements); these are all that are used. */
const USED = ['b', 'div', 'li', 'p', 'ul'];

interface Shown {
  readonly resourceType: string;
  readonly text?: { readonly status: string; readonly div: string };
}
const shownOf = (records: Parameters<typeof preparedOf>[0], over: Parameters<typeof preparedOf>[1] = {}) =>
  preparedOf(records, over).prepared.map(({ resource }) => resource as Shown);

/** What somebody reads of it; throws where it is not XML. */
function read(div: string): Element {
  const parsed = new DOMParser().parseFromString(div, 'application/xhtml+xml');
  const root = parsed.documentElement;
  if (root.querySelector('parsererror') || root.localName === 'parsererror') throw new Error(`not XML: ${div}`);
  return root;
}
const linesOf = (div: string): readonly string[] =>
  [...read(div).querySelectorAll('b, li')].map(({ textContent }) => textContent ?? '');

test('what a clinician may see elsewhere has a text, and nothing else has', () => {
  const types = (has: boolean) =>
    new Set(shownOf(livedRecords()).flatMap(({ resourceType, text }) => ((text !== undefined) === has ? [resourceType] : [])));
  expect(types(true)).toEqual(new Set(['CarePlan', 'ServiceRequest', 'Observation', 'QuestionnaireResponse']));
  expect(types(false)).toEqual(new Set(['Patient', 'Device', 'DocumentReference']));
});

test('of any records, each text is plain XHTML and says something', () => {
  fc.assert(
    fc.property(anyRecords, (records) => {
      for (const { text } of shownOf(records)) {
        if (!text) continue;
        const root = read(text.div);
        expect(root.namespaceURI).toBe('http://www.w3.org/1999/xhtml');
        for (const element of [root, ...root.querySelectorAll('*')]) expect(USED).toContain(element.localName);
        expect(root.textContent?.trim()).not.toBe('');
        expect(text.status).toBe('generated');
      }
    }),
    { numRuns: 20 },
  );
});

test('any text at all comes out as it went in, but for what XML has no way to write', () => {
  fc.assert(
    fc.property(fc.string({ unit: 'binary' }), fc.string({ unit: 'grapheme' }), (name, text) => {
      // biome-ignore lint/suspicious/noControlCharactersInRegex: these are the ones that are meant.
      const kept = (each: string) => each.replace(/[\u0000-\u0008\u000b\u000c\u000e-\u001f\ufffe\uffff\ud800-\udfff]/gu, ' ');
      const [title, line] = linesOf(narrative(text, [[name, text]]).div);
      const plain = (each: string) => each.replaceAll('\r\n', '\n').replaceAll('\r', '\n');
      expect(title).toBe(plain(kept(text)));
      expect(line).toBe(plain(`${kept(name)}: ${kept(text)}`));
    }),
  );
});

test('what was typed is text, never a mark', () => {
  const [title, line] = linesOf(narrative('<b>', [[null, '<script src="x">&amp;</script>']]).div);
  expect([title, line]).toEqual(['<b>', '<script src="x">&amp;</script>']);
});

test('a set reads with its leg, count, range and error', () => {
  const [first] = shownOf(livedRecords()).flatMap(({ resourceType, text }) =>
    resourceType === 'Observation' && text ? [text.div] : [],
  );
  const lines = linesOf(first ?? '');
  expect(lines[0]).toMatch(/^Set of /);
  for (const pattern of [
    /^Where: .*(left|right)/i,
    /^When: \d{4}-\d\d-\d\d \d\d:\d\d UTC/,
    /^Value: \d+ repetitions$/,
    /range.*: \d+(\.\d+)?°$/i,
  ])
    expect(lines.filter((each) => pattern.test(each)).length).toBeGreaterThan(0);
});

test('with texts left out no text for people holds what was typed', () => {
  const { sets, diary } = livedRecords();
  const typed = ['the camera was late', 'Wilma Beispiel'];
  const all = (texts: boolean) => JSON.stringify(shownOf({ sets, diary }, { texts }).map(({ text }) => text));
  for (const each of typed) {
    expect(all(true)).toContain(each);
    expect(all(false)).not.toContain(each);
  }
});
