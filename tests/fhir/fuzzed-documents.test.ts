import { strToU8 } from 'fflate';
import { expect, test } from 'vitest';
import { collectionBundle } from '../../src/fhir/bundles.ts';
import { recordsOf } from '../../src/fhir/records-of.ts';
import { resourcesOf } from '../../src/fhir/resources.ts';
import { newId } from '../../src/record/new-id.ts';
import { openSetStore } from '../../src/record/open-store.ts';
import { type PersonId, SELF } from '../../src/record/person.ts';
import { ok } from '../../src/result.ts';
import { SERVER_CATALOGUES } from '../../src/screens/words/server-catalogues.ts';
import { ask } from '../../src/sync/ask.ts';
import { recordFileOf } from '../../src/sync/brought-records.ts';
import { fakeBrowser } from '../record/fake-browser.ts';
import { someEntries, someSets } from '../record/file/written-record.ts';
import { type Bytes, FUZZ_MS, FUZZ_RUNS, fuzzImport } from '../record/fuzzed-import.ts';
import { rawRows } from '../record/lock/raw-rows.ts';
import { wentWell } from '../record/went-well.ts';
import { contextOf } from './context.ts';

const bytesOf = (text: string) => strToU8(text) as Bytes;
const SENTENCES = [SERVER_CATALOGUES.en, SERVER_CATALOGUES.es].map(({ unread }) => unread(1));

test(
  'answers of a server that are almost records: each is refused and counted in a sentence, or taken in whole',
  async () => {
    const [sets, entries] = [someSets(), someEntries()];
    const context = contextOf(entries);
    const bundle = collectionBundle(resourcesOf(context, sets, entries).prepared, newId, '2026-05-09T10:00:00.000Z');
    const text = JSON.stringify({ ...bundle, type: 'searchset' });
    const page = fakeBrowser().page();
    const store = wentWell(await openSetStore(page));
    const records = await store.records();
    const stored = async () => JSON.stringify(await rawRows(page.indexedDB));
    const person: PersonId = SELF;
    const outcomes = await fuzzImport(
      {
        valid: [bytesOf(text)],
        texts: [text],
        remade: (_, changed) => bytesOf(changed),
        // As from the network: what is no FHIR is not looked into.
        read: (bytes) => {
          const answer = { status: 200, headers: new Headers(), text: async () => new TextDecoder().decode(bytes) };
          const around = { http: async () => answer, wait: async () => undefined, nowMs: () => 0, chance: () => 0.5 };
          return ask(around as unknown as Parameters<typeof ask>[0], 'https://clinic.example/fhir', { method: 'GET' } as never);
        },
        taken: async (answer) => {
          const found = recordsOf(answer, context.naming);
          // Before: nothing is written of what is refused.
          if (found.sets.length + found.diary.length === 0) return ok(null);
          return records.taken(
            { kind: 'here', person },
            recordFileOf(
              found.sets.map((set) => ({ ...set, person })),
              found.diary,
              '2026-05-09T10:00:00.000Z',
            ),
          );
        },
        stored,
        sentences: () => SENTENCES,
      },
      FUZZ_RUNS,
    );
    expect(Object.keys(outcomes)).toContain('ok');
  },
  FUZZ_MS,
);
