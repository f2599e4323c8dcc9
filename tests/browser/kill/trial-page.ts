/**
 * A page that does at once, over and over, all that writes: sets counted from a recording by the program's own session, saved entries, and records taken in.
 * It tells what it has shown. `kill.test.ts` ends its browser at any moment and asks it afterwards what is there.
 */

import { manySets } from '../../../scripts/bench/many-sets.ts';
import { exerciseOf } from '../../../src/exercises/catalogue.ts';
import { finishSet, markOnset, startSet, stepSet } from '../../../src/measure/set.ts';
import { DATABASE_NAME } from '../../../src/record/database.ts';
import { readRecord } from '../../../src/record/file/read-record.ts';
import type { Brought } from '../../../src/record/file/record-store.ts';
import { writeRecord } from '../../../src/record/file/write-record.ts';
import { newId } from '../../../src/record/new-id.ts';
import { openSetStore } from '../../../src/record/open-store.ts';
import { decodeRecording } from '../../../src/record/recording.ts';
import type { Store } from '../../../src/record/store.ts';
import type { Result } from '../../../src/result.ts';
import type { FrameSource } from '../../../src/run/frame-source.ts';
import { type FrameObserver, startSession } from '../../../src/run/session.ts';
import { nextTurn } from '../../../src/screens/adapter/next-turn.ts';
import { edit, header, idOf, momentOf, rep, result } from '../../record/set-builders.ts';
import { checkIn, report } from '../../symptoms/told.ts';
import type { Kept, Told, TrialPage } from './trial.ts';

declare global {
  interface Window {
    readonly told: (what: Told) => void;
    readonly underWay: (share: number) => void;
    readonly trial: TrialPage;
  }
}

const SETS_OF_A_RECORD = 12;
const ENTRIES_OF_A_RECORD = 30;
const ENTRIES_AT_ONCE = 4;

const need = <T>(found: Result<T, { readonly kind: string }>): T => {
  if (found.ok) return found.value;
  throw new Error(`the page can't go on: ${JSON.stringify(found.error)}`);
};

/** One set: the recording's observations, through the session that a camera's pictures go through. */
async function countSet(store: Store, text: string): Promise<void> {
  const recording = need(decodeRecording(text));
  const { observations, exercise, side } = recording;
  const size = { width: recording.source.width, height: recording.source.height };
  let at = 0;
  const source: FrameSource = {
    size,
    live: false,
    stop: () => undefined,
    async *frames() {
      for (const { tMs } of observations) {
        await nextTurn();
        yield { tMs, image: { close: () => undefined } as unknown as VideoFrame, turn: 0 };
      }
    },
  };
  const client: FrameObserver = {
    begin: async () => undefined,
    follow: async () => [],
    observe: async () => {
      const seen = observations[at];
      at += 1;
      if (!seen) throw new Error(`observe requires as many observations as frames, got ${at}`);
      return seen;
    },
  };
  let setId = '';
  const session = startSession(
    {
      source,
      client,
      spec: { exercise: exerciseOf(exercise), side, size, targetReps: null },
      head: 'find',
      origin: { person: 'me', source: 'file', model: 'full', fileName: String(exercise) },
      store: {
        ...store,
        begin: (header) => {
          setId = header.id;
          return store.begin(header);
        },
      },
      now: Date.now,
      onView: () => undefined,
      onEvent: (event) => {
        if (event.kind !== 'rep') return;
        document.body.textContent = String(event.rep.number);
        window.told({ kind: 'counted', setId, number: event.rep.number });
      },
      onStoreTrouble: (error) => error && window.told({ kind: 'trouble', what: error.kind }),
    },
    { startSet, stepSet, markOnset, finishSet },
  );
  const set = need(await session.done);
  window.told({ kind: 'ended', setId: set.id, reps: set.reps.length });
  const change = { id: newId(), schema: 1, setId: set.id, at: new Date().toISOString(), kind: 'add' } as const;
  need(await store.edit(change));
  window.told({ kind: 'changed', setId: set.id, editId: change.id });
}

async function saveEntries(store: Store): Promise<void> {
  const entries = Array.from({ length: ENTRIES_AT_ONCE }, (_, i) => ({ ...report(1 + (i % 28), 9), id: newId() }));
  const ids = entries.map(({ id }) => id);
  window.told({ kind: 'saving', ids });
  need(await store.diary.add(entries));
  window.told({ kind: 'saved', ids });
}

async function bringRecord(store: Store): Promise<void> {
  const sets = Array.from({ length: SETS_OF_A_RECORD }, (_, i) => {
    const id = newId();
    const reps = [rep(1), rep(2), rep(3)];
    const edits = [{ ...edit({ kind: 'add' }, id), id: newId() }];
    return { ...header({ id, startedAt: momentOf(i) }), state: 'finished', reps, result: result(reps), edits } as const;
  });
  const diary = Array.from({ length: ENTRIES_OF_A_RECORD }, (_, i) => ({ ...checkIn(2 + (i % 27), 8), id: newId() }));
  const person = { ids: [newId()], name: null, affectedSide: null };
  const bytes = await writeRecord({ createdAt: momentOf(500), person, diary, pages: [sets] }, null, crypto);
  const record = need(await readRecord(bytes, null, crypto));
  const whose = {
    id: newId(),
    schema: 1,
    name: 'Ines Ejemplo (invented)',
    affectedSide: 'left',
    notes: '',
    addedAt: momentOf(1),
    changedAt: momentOf(1),
    seenUntil: null,
  } as const;
  const coming = { person: whose.id, sets: sets.length, entries: diary.length };
  window.told({ kind: 'bringing', ...coming });
  need(await (await store.records()).taken({ kind: 'new', person: whose }, record));
  window.told({ kind: 'brought', ...coming });
}

/** A record of many sets with curves, always the same one; told of is how far taking it in is. */
async function bringMany(store: Store, count: number): Promise<Brought> {
  const person = { ids: ['00000000-0000-4000-8400-000000000001'], name: null, affectedSide: null };
  const diary = Array.from({ length: ENTRIES_OF_A_RECORD }, (_, i) => ({ ...checkIn(2 + (i % 27), 8), id: idOf(2000 + i) }));
  const pages = [[...manySets(count)]];
  const bytes = await writeRecord({ createdAt: momentOf(500), person, diary, pages }, null, crypto);
  const record = need(await readRecord(bytes, null, crypto));
  const records = await store.records();
  return need(await records.taken({ kind: 'here', person: 'me' }, record, (share) => window.underWay(share)));
}

const forever = async (work: () => Promise<void>): Promise<never> => {
  for (;;) await work();
};

/** Ids in a table that name a set which is not there. */
async function strays(): Promise<readonly string[]> {
  const db = await new Promise<IDBDatabase>((resolve, reject) => {
    const opening = indexedDB.open(DATABASE_NAME);
    opening.onsuccess = () => resolve(opening.result);
    opening.onerror = () => reject(opening.error);
  });
  const rows = (table: string) =>
    new Promise<readonly { readonly id: string; readonly setId: string }[]>((resolve, reject) => {
      const asking = db.transaction(table).objectStore(table).getAll();
      asking.onsuccess = () => resolve(asking.result);
      asking.onerror = () => reject(asking.error);
    });
  const sets = new Set((await rows('sets')).map(({ id }) => id));
  const belonging = (await Promise.all(['reps', 'results', 'edits'].map(rows))).flat();
  db.close();
  return belonging.map(({ setId }) => setId).filter((id) => !sets.has(id));
}

async function keptOf(store: Store): Promise<Kept> {
  const { people, damaged } = need(await store.people.list());
  const found: Kept['sets'][number][] = [];
  const entries: string[] = [];
  const faults = damaged.map(({ id, what }) => `person ${id}: ${what}`);
  const brought: Kept['people'][number][] = [];
  for (const id of ['me', ...people.map(({ person }) => person.id)]) {
    const own = store.of(id);
    const sets = need(await own.list({ limit: 10_000 }));
    const diary = need(await own.diary.all());
    for (const each of [...sets.damaged, ...diary.damaged]) faults.push(`${each.id}: ${each.what}`);
    for (const set of sets.sets) {
      const { state, reps, edits } = set;
      found.push({ id: set.id, state, numbers: reps.map(({ number }) => number), edits: edits.map((each) => each.id) });
    }
    entries.push(...diary.entries.map((each) => each.id));
    brought.push({ id, sets: sets.sets.length, entries: diary.entries.length });
  }
  return { sets: found, entries, people: brought, faults, strays: await strays() };
}

const store = need(await openSetStore());

Object.assign(window, {
  trial: {
    kept: () => keptOf(store),
    bringMany: (count) => bringMany(store, count),
    begin: (recordings) => {
      let next = 0;
      const fault = (cause: unknown) => window.told({ kind: 'trouble', what: String(cause) });
      const nextSet = () => {
        next += 1;
        return countSet(store, recordings[next % recordings.length] ?? '');
      };
      for (const work of [nextSet, () => saveEntries(store), () => bringRecord(store)]) forever(work).catch(fault);
    },
  } satisfies TrialPage,
});
