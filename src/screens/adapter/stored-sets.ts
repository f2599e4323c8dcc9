import { newId } from '../../record/new-id.ts';
import type { PersonId } from '../../record/person.ts';
import type { RepEdit } from '../../record/rep-edit.ts';
import type { SetStore } from '../../record/set-store.ts';
import type { StoreError } from '../../record/store-error.ts';
import type { StoredSet } from '../../record/stored-set.ts';
import { fail, ok, type Result } from '../../result.ts';
import { entryNow } from '../day/entry-now.ts';
import type { AppServices, Change, Problem, ShownSet, StoredSets } from '../services.ts';
import { allSets } from './all-sets.ts';
import { problemOf } from './problem-of.ts';

/** Sets that were measured in this page but are not on the disk, by their id. */
export type UnstoredSets = Map<string, StoredSet>;

function editOf(setId: string, change: Change): RepEdit {
  const base = { id: newId(), schema: 1, setId, at: new Date().toISOString() } as const;
  return { ...base, ...change };
}

/** The stored sets of one person as the screens ask for them; somebody else's set is as good as missing. */
export function storedSets(
  opening: Promise<Result<SetStore, StoreError>>,
  unstored: UnstoredSets,
  person: PersonId,
): Pick<AppServices, 'sets' | 'set' | 'change' | 'remove'> {
  const shown = (set: StoredSet): ShownSet => ({ ...set, onDisk: !unstored.has(set.id) });

  const read = async (id: string): Promise<Result<ShownSet, Problem>> => {
    const held = unstored.get(id);
    if (held) return ok(shown(held));
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
    return ok({ sets: read.value.sets.map(shown), damaged: read.value.damaged.length });
  };

  return {
    sets: all,
    set: read,
    async change(id, change) {
      const theirs = await owned(id);
      if (!theirs.ok) return theirs;
      const written = await theirs.value.edit(editOf(id, change));
      return written.ok ? read(id) : fail(problemOf(written.error));
    },
    async remove(id) {
      if (unstored.delete(id)) return ok(null);
      const theirs = await owned(id);
      if (!theirs.ok) return theirs;
      const removed = await theirs.value.remove(id, entryNow());
      return removed.ok ? ok(null) : fail(problemOf(removed.error));
    },
  };
}
