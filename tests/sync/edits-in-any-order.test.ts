import fc from 'fast-check';
import { expect, test } from 'vitest';
import { transactionBundle } from '../../src/fhir/bundles.ts';
import { DEFAULT_NAMING } from '../../src/fhir/naming.ts';
import { openSetStore } from '../../src/record/open-store.ts';
import { SELF } from '../../src/record/person.ts';
import type { RepEdit } from '../../src/record/rep-edit.ts';
import type { StoredSet } from '../../src/record/stored-set.ts';
import { ok } from '../../src/result.ts';
import { recordFileOf } from '../../src/sync/brought-records.ts';
import type { FhirServer } from '../../src/sync/fhir-server.ts';
import { takeInNew } from '../../src/sync/take-in-new.ts';
import { counting, preparedOf } from '../fhir/context.ts';
import { fakeBrowser } from '../record/fake-browser.ts';
import { header, idOf, momentOf, rep, result } from '../record/set-builders.ts';
import { wentWell } from '../record/went-well.ts';

const reps = [rep(1), rep(2)];
const SET: StoredSet = { ...header(), state: 'finished', reps, result: result(reps), edits: [] };

/** Changes by hand of one set at three moments, some of the same; half of them contradict one another. */
const anyEdits: fc.Arbitrary<readonly RepEdit[]> = fc
  .uniqueArray(
    fc.tuple(fc.integer({ min: 1, max: 40 }), fc.integer({ min: 1, max: 3 }), fc.constantFrom('strike', 'restore', 'add')),
    {
      minLength: 2,
      maxLength: 6,
      selector: ([id]) => id,
    },
  )
  .map((all) =>
    all.map(([n, second, kind]) => {
      const base = { id: idOf(100 + n), schema: 1, setId: SET.id, at: momentOf(500 + second) } as const;
      return kind === 'add' ? { ...base, kind } : { ...base, kind: kind as 'strike', rep: { kind: 'measured', number: 1 } };
    }),
  );

/** How each change comes to a machine: in which batch, and whether the batch is a record file or a server's page, with the set or without. */
const anyArrival = fc.record({
  batchOf: fc.array(fc.integer({ min: 0, max: 3 }), { minLength: 6, maxLength: 6 }),
  ways: fc.array(fc.constantFrom('file', 'page', 'page-with-set'), { minLength: 4, maxLength: 4 }),
  order: fc.shuffledSubarray([0, 1, 2, 3], { minLength: 4, maxLength: 4 }),
});
type Arrival = typeof anyArrival extends fc.Arbitrary<infer T> ? T : never;

/** What a machine that has the set holds in the end. */
async function heldAfter(edits: readonly RepEdit[], { batchOf, ways, order }: Arrival): Promise<readonly RepEdit[]> {
  const store = wentWell(await openSetStore(fakeBrowser().page()));
  const [records, sync] = [await store.records(), await store.sync()];
  const file = (all: readonly RepEdit[]) => recordFileOf([{ ...SET, edits: all }], [], momentOf(900));
  wentWell(await records.taken({ kind: 'here', person: SELF }, file([])));
  const base = 'https://clinic.invalid/fhir';
  wentWell(await sync.save({ person: SELF, server: base, patient: 'Patient/one', cursor: null, sentAt: null, takenAt: null }));
  const page = async (all: readonly RepEdit[], withSet: boolean) => {
    const bundle = transactionBundle(preparedOf({ sets: [{ ...SET, edits: all }], diary: [] }).prepared, counting());
    const entry = (bundle.entry ?? []).filter(({ resource }) => {
      const isSet = resource?.resourceType === 'DocumentReference' && resource.identifier?.[0]?.value === SET.id;
      return resource?.resourceType === 'DocumentReference' && (withSet || !isSet);
    });
    const server: FhirServer = {
      base,
      get: async () => ok(JSON.parse(JSON.stringify({ resourceType: 'Bundle', type: 'searchset', entry }))),
      post: async () => {
        throw new Error('nothing is sent here');
      },
    };
    const connection = wentWell(await sync.connection(SELF));
    if (!connection) throw new Error('page requires a connected person, got none');
    const around = {
      http: () => Promise.reject(new Error('nothing is asked here')),
      nowMs: () => 0,
      chance: () => 0,
      wait: async () => undefined,
      newId: () => idOf(1),
    };
    const job = { around, server, store: sync, records, sets: store, naming: DEFAULT_NAMING, connection };
    expect(wentWell(await takeInNew(job))).toMatchObject({ conflicts: 0, refused: [], early: 0 });
  };
  for (const batch of order) {
    const coming = edits.filter((_, i) => batchOf[i] === batch);
    if (ways[batch] === 'file') wentWell(await records.taken({ kind: 'here', person: SELF }, file(coming)));
    else await page(coming, ways[batch] === 'page-with-set');
  }
  return wentWell(await store.read(SET.id)).edits;
}

test('changes by hand, some of one moment, come to the same on two machines in whatever order, parts and ways they arrive', async () => {
  await fc.assert(
    fc.asyncProperty(anyEdits, anyArrival, anyArrival, async (edits, here, there) => {
      const held = await heldAfter(edits, here);
      expect(held.map(({ id }) => id)).toEqual(
        edits.toSorted((a, b) => (`${a.at} ${a.id}` < `${b.at} ${b.id}` ? -1 : 1)).map(({ id }) => id),
      );
      expect(await heldAfter(edits.toReversed(), there)).toEqual(held);
    }),
    { numRuns: 40 },
  );
});
