import { createHash } from 'node:crypto';
import { IDBObjectStore } from 'fake-indexeddb';
import { strFromU8, strToU8, unzipSync, zipSync } from 'fflate';
import { afterEach, expect, test, vi } from 'vitest';
import type { RecordFile } from '../../src/record/file/read-record.ts';
import { readRecord } from '../../src/record/file/read-record.ts';
import { openSetStore } from '../../src/record/open-store.ts';
import { SELF } from '../../src/record/person.ts';
import { packed } from '../../src/record/plan-code.ts';
import { decodePlan, encodePlan } from '../../src/record/plan-transfer.ts';
import { en } from '../../src/screens/words/en.ts';
import { es } from '../../src/screens/words/es.ts';
import { RECORD_CATALOGUES } from '../../src/screens/words/record-catalogues.ts';
import { fakeBrowser } from './fake-browser.ts';
import { PASSPHRASE, someEntries, someSets, written } from './file/written-record.ts';
import { type Bytes, FUZZ_MS, FUZZ_RUNS, type FuzzedImport, fuzzImport, IS_WHOLE } from './fuzzed-import.ts';
import { rawRows } from './lock/raw-rows.ts';
import { therapistsPlan } from './therapists-plan.ts';
import { wentWell } from './went-well.ts';

const LANGUAGES = [
  [en, RECORD_CATALOGUES.en],
  [es, RECORD_CATALOGUES.es],
] as const;

/** What the screen says of a failure, in both languages. */
const recordSentences = ({ kind }: { readonly kind: string }): readonly string[] =>
  LANGUAGES.flatMap(([words, { bring }]) => {
    if (kind === 'record-sealed') return [bring.sealedTitle];
    if (kind === 'record-elsewhere') return [bring.elsewhere('Ina Invented', 2).todo];
    const said =
      kind in bring.faults
        ? bring.faults[kind as keyof typeof bring.faults]
        : words.problems[kind as keyof typeof words.problems]?.('');
    return said ? [said.title, said.todo] : [];
  });

afterEach(() => {
  vi.restoreAllMocks();
});

/** How often anything was asked to be written, in whatever transaction, whether it came to stay or not. */
function writesAsked(): () => number {
  const spies = (['put', 'add', 'delete', 'clear'] as const).map((way) => vi.spyOn(IDBObjectStore.prototype, way));
  return () => spies.reduce((sum, { mock }) => sum + mock.calls.length, 0);
}

const isPart = (name: string) => name.startsWith('sets/') || name.startsWith('diary/');

async function fuzzedRecord(): Promise<FuzzedImport<RecordFile>> {
  const plain = await written(someSets(), someEntries());
  const sealed = await written(someSets(), someEntries(), { passphrase: PASSPHRASE });
  const [files, outer] = [unzipSync(plain), unzipSync(sealed)];
  const names = Object.keys(files);
  const texts = [...names.map((name) => strFromU8(files[name] as Uint8Array)), strFromU8(outer['header.json'] as Uint8Array)];
  /** The record with one text changed, and its checksum and length with it. */
  const remade = (index: number, text: string): Bytes => {
    const name = names[index];
    if (name === undefined) return zipSync({ ...outer, 'header.json': strToU8(text) }) as Bytes;
    const bytes = strToU8(text);
    const manifest = strFromU8(files['manifest.json'] as Uint8Array)
      .replace(
        createHash('sha256')
          .update(files[name] as Uint8Array)
          .digest('hex'),
        createHash('sha256').update(bytes).digest('hex'),
      )
      .replace(`"bytes": ${files[name]?.length},`, `"bytes": ${bytes.length},`);
    return zipSync({ ...files, ...(isPart(name) ? { 'manifest.json': strToU8(manifest) } : {}), [name]: bytes }) as Bytes;
  };
  const page = fakeBrowser().page();
  const store = wentWell(await openSetStore(page));
  const records = await store.records();
  const asked = writesAsked();
  let last = { asked: -1, rows: '' };
  return {
    valid: [plain, sealed],
    texts,
    remade,
    read: (bytes) => readRecord(bytes, PASSPHRASE, crypto),
    taken: (record) => records.taken({ kind: 'here', person: SELF }, record),
    // Read anew whenever a single row was written since, even in vain.
    stored: async () => {
      if (asked() !== last.asked) last = { asked: asked(), rows: JSON.stringify(await rawRows(page.indexedDB)) };
      return last.rows;
    },
    sentences: recordSentences,
  };
}

test(
  'files that are almost records are each refused with a sentence, or taken in; none leaves half of itself',
  async () => {
    const outcomes = await fuzzImport(await fuzzedRecord(), FUZZ_RUNS);
    // Every way to fail was gone, so that the files were not all stopped at the door.
    const ways = ['ok', 'not-a-record', 'record-damaged', 'record-newer', 'record-wrong', 'record-too-large'];
    expect(Object.keys(outcomes)).toEqual(expect.arrayContaining(IS_WHOLE ? ways : ['record-damaged']));
  },
  FUZZ_MS,
);

test.each(['file', 'link'] as const)(
  'a plan’s %s that is almost one is refused with a sentence, or read',
  async (carrier) => {
    const plan = therapistsPlan;
    const text = wentWell(encodePlan(plan));
    /** What a link of this document would say; a document that is too large for one goes as it is. */
    const linked = (json: string) => {
      const code = packed(json);
      return `https://clinic.example/evenside/#/take/${code.ok ? code.value : json}`;
    };
    const carried = carrier === 'file' ? (json: string) => json : linked;
    const outcomes = await fuzzImport(
      {
        valid: [strToU8(carried(text)) as Bytes],
        texts: [text],
        remade: (_, changed) => strToU8(carried(changed)) as Bytes,
        read: async (bytes) => decodePlan(new TextDecoder().decode(bytes)),
        sentences: ({ kind }) => LANGUAGES.map(([{ handOver }]) => handOver.take.faults[kind as 'not-a-plan']?.title),
      },
      FUZZ_RUNS,
    );
    const ways = ['ok', 'plan-damaged', 'plan-wrong', ...(carrier === 'file' ? ['not-a-plan'] : [])];
    expect(Object.keys(outcomes)).toEqual(expect.arrayContaining(IS_WHOLE ? ways : ['plan-damaged']));
  },
  FUZZ_MS,
);
