import { randomUUID } from 'node:crypto';
import { DEFAULT_NAMING } from '../../src/fhir/naming.ts';
import { openSetStore } from '../../src/record/open-store.ts';
import { type Person, SELF } from '../../src/record/person.ts';
import type { Store } from '../../src/record/store.ts';
import type { StoredSet } from '../../src/record/stored-set.ts';
import { ok } from '../../src/result.ts';
import { type Access, OPEN } from '../../src/sync/access.ts';
import { recordFileOf } from '../../src/sync/brought-records.ts';
import { fhirServer } from '../../src/sync/fhir-server.ts';
import type { Http, Surroundings } from '../../src/sync/http.ts';
import { sendWaiting } from '../../src/sync/send-waiting.ts';
import { takeInNew } from '../../src/sync/take-in-new.ts';
import { fakeBrowser } from '../record/fake-browser.ts';
import { idOf, momentOf } from '../record/set-builders.ts';
import { wentWell } from '../record/went-well.ts';

export interface MachineOptions {
  readonly http?: Http;
  /** What is shown to the server; nothing unless said otherwise. */
  readonly access?: Access;
  readonly nowMs?: () => number;
  readonly chance?: () => number;
  /** Told of every wait; nothing is really waited for. */
  readonly onWait?: (ms: number) => void;
}

/** A machine with a store of its own that knows one person of a server: as themselves (`SELF`), or as somebody whom a therapist looks after. */
export async function machine(base: string, patient: string, whose: 'own' | 'looked-after', options: MachineOptions = {}) {
  const store: Store = wentWell(await openSetStore(fakeBrowser().page()));
  const person = whose === 'own' ? SELF : idOf(700);
  const known: Person = {
    id: person,
    schema: 1,
    name: 'Ina Invented',
    affectedSide: null,
    notes: '',
    addedAt: momentOf(1),
    changedAt: momentOf(1),
    seenUntil: null,
  };
  if (person !== SELF) wentWell(await store.people.save(known));
  const sync = await store.sync();
  wentWell(await sync.save({ person, server: base, patient, cursor: null, sentAt: null, takenAt: null }));
  const around: Surroundings = {
    http: options.http ?? ((url, request) => fetch(url, request)),
    nowMs: options.nowMs ?? Date.now,
    chance: options.chance ?? (() => 0.5),
    wait: async (ms) => options.onWait?.(ms),
    newId: randomUUID,
  };
  const server = fhirServer(around, base, options.access ?? OPEN);
  const connection = async () => {
    const found = wentWell(await sync.connection(person));
    if (!found) throw new Error('connection requires a connected person, got none');
    return found;
  };
  const of = store.of(person);
  return {
    person,
    store: of,
    people: store.people,
    sync,
    send: async () =>
      sendWaiting({
        around,
        server,
        store: sync,
        connection: await connection(),
        diary: async () => {
          const all = await of.diary.all();
          return all.ok ? ok(all.value.entries) : all;
        },
        context: { naming: DEFAULT_NAMING, version: '0.1.0', texts: true },
      }),
    takeIn: async () =>
      takeInNew({
        around,
        server,
        store: sync,
        records: await store.records(),
        sets: store,
        naming: DEFAULT_NAMING,
        connection: await connection(),
      }),
    /** Writes sets that are over, as if they had been done here. */
    has: async (sets: readonly StoredSet[]) =>
      wentWell(await (await store.records()).taken({ kind: 'here', person }, recordFileOf(sets, [], momentOf(1)))),
    /** All that is here, without whose it is. */
    all: async () => {
      const sets: StoredSet[] = [];
      let page = wentWell(await of.list({ limit: 500 }));
      for (;;) {
        sets.push(...page.sets);
        if (!page.next) break;
        page = wentWell(await of.list({ limit: 500, after: page.next }));
      }
      const byId = (a: { readonly id: string }, b: { readonly id: string }) => (a.id < b.id ? -1 : 1);
      return {
        sets: sets.map(({ person: _, ...set }) => set).toSorted(byId),
        diary: [...wentWell(await of.diary.all()).entries].toSorted(byId),
      };
    },
  };
}
