import type { DiaryEntry } from '../../record/diary-entry.ts';
import { newId } from '../../record/new-id.ts';
import type { PersonId } from '../../record/person.ts';
import type { RepEdit } from '../../record/rep-edit.ts';
import type { SetStore } from '../../record/set-store.ts';
import type { PersonStore } from '../../record/store.ts';
import type { StoreError } from '../../record/store-error.ts';
import type { StoredSet } from '../../record/stored-set.ts';
import { writtenAfter } from '../../record/written-after.ts';
import { fail, ok, type Result } from '../../result.ts';
import { entryNow } from '../day/entry-now.ts';
import type { AppServices, Change, Problem, ShownSet, StoredSets } from '../services.ts';
import { allSets } from './all-sets.ts';
import { problemOf } from './problem-of.ts';

/** A set that this page alone holds, and for which line of a plan it was done. */
export interface Unstored {
  readonly set: StoredSet;
  readonly link: readonly DiaryEntry[];
}

/** Sets that were measured in this page but are not on the disk, by their id. */
export type UnstoredSets = Map<string, Unstored>;

function editOf(setId: string, change: Change): RepEdit {
  const base = { id: newId(), schema: 1, setId, at: new Date().toISOString() } as const;
  return { ...base, ...change };
}

/** Writes a set with its changes by hand and its line. What was written already is not written twice. */
async function storedWhole(store: PersonStore, { set, link }: Unstored): Promise<Result<null, Problem>> {
  const { state, reps, result, edits, ...header } = set;
  if (state === 'running') throw new Error(`storedWhole requires a set that has ended, got ${set.id}`);
  const kept = result ? ok(undefined) : await store.append(header, reps);
  const ended = kept.ok ? await store.end(header, { state, result }) : kept;
  if (!ended.ok) return fail(problemOf(ended.error));
  const there = await store.read(set.id);
  if (!there.ok) return fail(problemOf(there.error));
  const known = new Set(there.value.edits.map(({ id }) => id));
  for (const edit of edits.filter(({ id }) => !known.has(id))) {
    const written = await store.edit(edit);
    if (!written.ok) return fail(problemOf(written.error));
  }
  const linked = await store.diary.add(link);
  return linked.ok ? ok(null) : fail({ kind: 'not-stored' });
}

/** The stored sets of one person as the screens ask for them; somebody else's set is as good as missing. */
export function storedSets(
  opening: Promise<Result<PersonStore, StoreError>>,
  unstored: UnstoredSets,
  person: PersonId,
): Pick<AppServices, 'sets' | 'set' | 'change' | 'remove' | 'store' | 'fileOf'> {
  const shown = (set: StoredSet): ShownSet => ({ ...set, onDisk: !unstored.has(set.id) });

  const read = async (id: string): Promise<Result<ShownSet, Problem>> => {
    const held = unstored.get(id);
    if (held) return ok(shown(held.set));
    const store = await opening;
    if (!store.ok) return fail(problemOf(store.error));
    const set = await store.value.read(id);
    if (!set.ok) return fail(problemOf(set.error));
    return set.value.person === person ? ok(shown(set.value)) : fail(problemOf({ kind: 'set-missing', id }));
  };

  /** The store, unless the set is somebody else's. One that can't be read may still be removed. */
  const owned = async (id: string): Promise<Result<SetStore, Problem>> => {
    const store = await opening;
    if (!store.ok) return fail(problemOf(store.error));
    const set = await store.value.read(id);
    return set.ok && set.value.person !== person ? fail(problemOf({ kind: 'set-missing', id })) : store;
  };

  const all = async (): Promise<Result<StoredSets, Problem>> => {
    const store = await opening;
    if (!store.ok) return fail(problemOf(store.error));
    const read = await allSets(store.value);
    if (!read.ok) return fail(problemOf(read.error));
    // What a full disk has of a set may be less than what the page holds of it.
    const held = [...unstored.values()].map(({ set }) => set);
    const sets = [...held, ...read.value.sets.filter(({ id }) => !unstored.has(id))];
    const newestFirst = sets.toSorted((a, b) => (a.startedAt < b.startedAt ? 1 : Number(a.startedAt > b.startedAt) * -1));
    return ok({ sets: newestFirst.map(shown), damaged: read.value.damaged.length });
  };

  return {
    sets: all,
    set: read,
    async change(id, change) {
      const held = unstored.get(id);
      if (held) {
        const { edits } = held.set;
        unstored.set(id, { ...held, set: { ...held.set, edits: [...edits, writtenAfter(editOf(id, change), edits)] } });
        return read(id);
      }
      const theirs = await owned(id);
      if (!theirs.ok) return theirs;
      const written = await theirs.value.edit(editOf(id, change));
      return written.ok ? read(id) : fail(problemOf(written.error));
    },
    async remove(id) {
      const held = unstored.delete(id);
      const theirs = await owned(id);
      if (!theirs.ok) return theirs;
      const removed = await theirs.value.remove(id, entryNow());
      // Of a set that the page held there may be something on the disk, or nothing.
      return removed.ok || (held && removed.error.kind === 'set-missing') ? ok(null) : fail(problemOf(removed.error));
    },
    async store(id) {
      const held = unstored.get(id);
      if (!held) return read(id);
      const store = await opening;
      if (!store.ok) return fail(problemOf(store.error));
      const written = await storedWhole(store.value, held);
      if (!written.ok) return written;
      unstored.delete(id);
      return read(id);
    },
    async fileOf(id) {
      const set = await read(id);
      if (!set.ok) return set;
      const { onDisk: _, ...whole } = set.value;
      return ok(await (await import('./unstored-file.ts')).unstoredFile(whole, person));
    },
  };
}
