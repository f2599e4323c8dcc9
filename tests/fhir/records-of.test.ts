import fc from 'fast-check';
import { expect, test } from 'vitest';
import { toBase64 } from '../../src/fhir/base64.ts';
import { collectionBundle, transactionBundle } from '../../src/fhir/bundles.ts';
import { DEFAULT_NAMING } from '../../src/fhir/naming.ts';
import { recordsOf } from '../../src/fhir/records-of.ts';
import { sha1 } from '../../src/fhir/sha1.ts';
import type { DiaryEntry } from '../../src/record/diary-entry.ts';
import type { StoredSet } from '../../src/record/stored-set.ts';
import { anyRecords } from './any-records.ts';
import { counting, preparedOf } from './context.ts';
import { livedRecords } from './lived-records.ts';

const at = '2026-05-09T10:00:00.000Z';
interface Attachment {
  data?: string;
  size?: number;
  hash?: string;
  url?: string;
}
interface Document {
  readonly resourceType: string;
  status: string;
  identifier: { system: string; value: string }[];
  type: { coding: { system: string; code: string }[] };
  content: { attachment: Attachment }[];
}
interface Json {
  readonly entry: readonly { readonly resource: Document }[];
}
const sent = (bundle: unknown): Json => JSON.parse(JSON.stringify(bundle));
const bundleOf = (records: Parameters<typeof preparedOf>[0], over: Parameters<typeof preparedOf>[1] = {}): Json =>
  sent(collectionBundle(preparedOf(records, over).prepared, counting(), at));
const read = (bundle: unknown) => recordsOf(bundle, DEFAULT_NAMING);

const sorted = <T extends { readonly id: string }>(all: readonly T[], key: (each: T) => string): readonly T[] =>
  all.toSorted((a, b) => {
    const [x, y] = [`${key(a)} ${a.id}`, `${key(b)} ${b.id}`];
    return x < y ? -1 : Number(x > y);
  });
const setsSorted = (sets: readonly StoredSet[]) => sorted(sets, ({ startedAt }) => startedAt);
const diarySorted = (diary: readonly DiaryEntry[]) => sorted(diary, (entry) => entry.at);
const lived = livedRecords();
/** Where the first document of a record of this kind stands. */
const documentOf = (bundle: Json, kind: string): Document => {
  const found = bundle.entry.find(({ resource }) => resource.type?.coding?.[0]?.code === kind)?.resource;
  if (!found) throw new Error(`documentOf requires a record of kind ${kind}, got none`);
  return found;
};
/** A document with another text, its size and hash right again. */
const rewritten = (document: Document, change: (value: Record<string, unknown>) => unknown): void => {
  const [content] = document.content;
  const bytes = Buffer.from(content?.attachment.data ?? '', 'base64');
  const text = Buffer.from(JSON.stringify(change(JSON.parse(bytes.toString('utf8')))));
  document.content = [{ attachment: { data: toBase64(text), size: text.length, hash: toBase64(sha1(text)) } }];
};

test('any records come back exactly as they went out, changes by hand in their order, from a bundle to keep or to send', () => {
  fc.assert(
    fc.property(anyRecords, (records) => {
      for (const bundle of [bundleOf(records), sent(transactionBundle(preparedOf(records).prepared, counting()))]) {
        const found = read(bundle);
        expect(found.sets).toEqual(setsSorted(records.sets));
        expect(found.diary).toEqual(diarySorted(records.diary));
        expect([found.edits, found.refused]).toEqual([[], []]);
      }
    }),
    { numRuns: 150 },
  );
});

test('what a server answers to a search is read: in another order, with ids of the server, some of it twice, with other things between', () => {
  const { entry } = bundleOf(lived);
  const answer = {
    resourceType: 'Bundle',
    type: 'searchset',
    entry: [...entry, ...entry.slice(5)]
      .toReversed()
      .map(({ resource }, i) => ({ resource: { ...resource, id: `${i}`, meta: { versionId: '1' } }, search: { mode: 'match' } })),
  };
  const found = read(answer);
  expect(found.sets).toEqual(setsSorted(lived.sets));
  expect(found.diary).toEqual(diarySorted(lived.diary));
  expect(found.refused).toEqual([]);
  expect(found.others).toBeGreaterThan(0);
});

test('changes of a set by hand from two sides come together in one order, whoever reads them', () => {
  const [set] = lived.sets.filter(({ edits }) => edits.length > 0);
  if (!set) throw new Error('this test requires a set with edits, got none');
  const there: StoredSet = {
    ...set,
    edits: set.edits.map((edit, i) => ({ ...edit, id: edit.id.replace(/^0/, '1'), at: edit.at.replace('.000Z', `.${i}00Z`) })),
  };
  const both = [bundleOf({ sets: [set], diary: [] }), bundleOf({ sets: [there], diary: [] })].map(({ entry }) => entry);
  const one = read({ entry: both.flat() });
  const other = read({ entry: both.toReversed().flat() });
  expect(one).toEqual(other);
  expect(one.sets[0]?.edits).toHaveLength(4);
  expect(read({ entry: both.flat().filter(({ resource }) => resource.type?.coding?.[0]?.code !== 'set') }).edits).toHaveLength(4);
});

test('a set that runs is not sent, and that is said', () => {
  const [first] = lived.sets;
  if (!first) throw new Error('this test requires a set, got none');
  const { prepared, leftOut } = preparedOf({ sets: [{ ...first, state: 'running', result: null }], diary: [] });
  expect(leftOut).toEqual([{ id: first.id, why: 'running' }]);
  expect(prepared.map(({ resource }) => resource.resourceType)).toEqual(['Patient', 'Device']);
});

test('without typed texts no name, note or file name is anywhere in the bundle; what is left out is named, all else comes back', () => {
  const words = ['Ina Invented', 'Wilma Beispiel', 'the camera was late', 'Dr Muster'];
  const named = preparedOf(lived);
  const bare = preparedOf(lived, { texts: false, subject: { kind: 'own', id: lived.sets[0]?.id ?? '', name: null } });
  const textOf = ({ prepared }: typeof bare) =>
    prepared
      .map(({ resource }) =>
        resource.resourceType === 'DocumentReference'
          ? Buffer.from(resource.content?.[0]?.attachment?.data ?? '', 'base64').toString('utf8')
          : JSON.stringify(resource),
      )
      .join('\n');
  for (const word of words) {
    expect(textOf(named)).toContain(word);
    expect(textOf(bare)).not.toContain(word);
  }
  const found = read(sent(collectionBundle(bare.prepared, counting(), at)));
  const left = new Set(bare.leftOut.map(({ id }) => id));
  // The therapist's plan, the clearance, the note of an edit.
  expect(bare.leftOut.map(({ why }) => why)).toEqual(['typed-text', 'typed-text', 'typed-text']);
  expect(found.diary).toEqual(diarySorted(lived.diary.filter(({ id }) => !left.has(id))));
  expect(found.sets).toEqual(
    setsSorted(lived.sets.map((set) => ({ ...set, edits: set.edits.filter(({ id }) => !left.has(id)) }))),
  );
});

test.each<[string, string, (document: Document) => void, object]>([
  [
    'one character of the data changed',
    'set',
    ({ content: [c] }) => {
      if (c) c.attachment.data = c.attachment.data?.replace(/.(.{8})$/, 'x$1') ?? '';
    },
    { kind: 'damaged', how: 'hash' },
  ],
  [
    'cut short',
    'set',
    ({ content: [c] }) => {
      if (c) c.attachment.data = c.attachment.data?.slice(0, 400) ?? '';
    },
    { kind: 'damaged', how: 'size' },
  ],
  [
    'not base64',
    'entry',
    ({ content: [c] }) => {
      if (c) c.attachment.data = '*';
    },
    { kind: 'damaged', how: 'base64' },
  ],
  [
    'no hash',
    'entry',
    ({ content: [c] }) => {
      delete c?.attachment.hash;
    },
    { kind: 'damaged', how: 'hash' },
  ],
  [
    'kept elsewhere',
    'entry',
    (document) => {
      document.content = [{ attachment: { url: 'Binary/1' } }];
    },
    { kind: 'elsewhere' },
  ],
  [
    'without content',
    'entry',
    (document) => {
      document.content = [];
    },
    { kind: 'damaged', how: 'no-attachment' },
  ],
  [
    'of another system',
    'entry',
    (document) => {
      document.identifier = [{ system: 'urn:other', value: '1' }];
    },
    { kind: 'foreign' },
  ],
  [
    'of another type',
    'entry',
    (document) => {
      document.type = { coding: [{ system: 'http://loinc.org', code: '1' }] };
    },
    { kind: 'foreign' },
  ],
  [
    'under another id',
    'entry',
    ({ identifier: [id] }) => {
      if (id) id.value = '00000000-0000-4000-8000-000000000999';
    },
    { kind: 'other-id' },
  ],
  [
    'entered in error',
    'entry',
    (document) => {
      document.status = 'entered-in-error';
    },
    { kind: 'withdrawn' },
  ],
  [
    'of a newer version',
    'entry',
    (document) => rewritten(document, (value) => ({ ...value, version: 2 })),
    { kind: 'newer', version: 2, known: 1 },
  ],
  [
    'with a field of another kind',
    'set',
    (document) => rewritten(document, (value) => ({ ...value, set: { ...(value.set as object), side: 'middle' } })),
    { kind: 'shape' },
  ],
  ['with a field too many', 'edit', (document) => rewritten(document, (value) => ({ ...value, more: 1 })), { kind: 'shape' }],
])('a document is refused whole, with the reason, and all others are read: %s', (_, kind, damage, why) => {
  const bundle = bundleOf(lived);
  const document = documentOf(bundle, kind);
  damage(document);
  const index = bundle.entry.findIndex(({ resource }) => resource === document);
  const { refused, sets, diary, edits } = read(bundle);
  expect(refused).toEqual([{ index, why: expect.objectContaining(why) }]);
  const whole = read(bundleOf(lived));
  const countOf = (found: Pick<typeof whole, 'sets' | 'diary' | 'edits'>) =>
    found.sets.length + found.diary.length + found.edits.length + found.sets.flatMap((set) => set.edits).length;
  expect(countOf({ sets, diary, edits })).toBe(countOf(whole) - 1);
});

test('one record that two documents tell differently is refused the second time', () => {
  const bundle = bundleOf(lived);
  const again = structuredClone(documentOf(bundle, 'entry'));
  rewritten(again, (value) => ({ ...value, entry: { ...(value.entry as object), at } }));
  const { refused, diary } = read({ entry: [...bundle.entry, { resource: again }] });
  expect(refused).toEqual([{ index: bundle.entry.length, why: { kind: 'differs' } }]);
  expect(diary).toEqual(diarySorted(lived.diary));
});

test('whatever else is given is no record, and nothing breaks', () => {
  fc.assert(
    fc.property(fc.jsonValue(), fc.jsonValue(), (value, other) => {
      const documents = {
        entry: [{ resource: { resourceType: 'DocumentReference', ...(other as object) } }, value, { resource: value }],
      };
      for (const each of [value, documents]) {
        const { sets, edits, diary } = read(each);
        expect([sets, edits, diary]).toEqual([[], [], []]);
      }
    }),
  );
});

// FIPS 180 examples, and lengths around the end of a block.
test.each([
  ['abc', 'a9993e364706816aba3e25717850c26c9cd0d89d'],
  ['', 'da39a3ee5e6b4b0d3255bfef95601890afd80709'],
  ['abcdbcdecdefdefgefghfghighijhijkijkljklmklmnlmnomnopnopq', '84983e441c3bd26ebaae4aa1f95129e5e54670f1'],
])('the hash is SHA-1: %s', (text, hex) => {
  expect(Buffer.from(sha1(new TextEncoder().encode(text))).toString('hex')).toBe(hex);
});

test('the hash is the one that the platform makes, whatever the length', async () => {
  await fc.assert(
    fc.asyncProperty(fc.uint8Array({ maxLength: 300 }), async (bytes) => {
      expect(sha1(bytes)).toEqual(new Uint8Array(await crypto.subtle.digest('SHA-1', bytes)));
    }),
  );
});
