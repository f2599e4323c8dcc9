import { newId } from '../../record/new-id.ts';
import type { RepEdit } from '../../record/rep-edit.ts';
import type { ListCursor, SetStore } from '../../record/set-store.ts';
import type { StoreError } from '../../record/store-error.ts';
import type { StoredSet } from '../../record/stored-set.ts';
import { fail, ok, type Result } from '../../result.ts';
import type { AppServices, Change, Problem, ShownSet, StoredSets } from '../services.ts';
import { problemOf } from './problem-of.ts';

/** How many sets are read at a time. */
const PAGE = 100;

/** Sets that were measured in this page but are not on the disk, by their id. */
export type UnstoredSets = Map<string, StoredSet>;

function editOf(setId: string, change: Change): RepEdit {
  const base = { id: newId(), schema: 1, setId, at: new Date().toISOString() } as const;
  return { ...base, ...change };
}

/** The stored sets as the screens ask for them. */
export function storedSets(
  opening: Promise<Result<SetStore, StoreError>>,
  unstored: UnstoredSets,
): Pick<AppServices, 'sets' | 'set' | 'change' | 'remove'> {
  const shown = (set: StoredSet): ShownSet => ({ ...set, onDisk: !unstored.has(set.id) });

  const read = async (id: string): Promise<Result<ShownSet, Problem>> => {
    const held = unstored.get(id);
    if (held) return ok(shown(held));
    const store = await opening;
    if (!store.ok) return fail(problemOf(store.error));
    const set = await store.value.read(id);
    return set.ok ? ok(shown(set.value)) : fail(problemOf(set.error));
  };

  const all = async (): Promise<Result<StoredSets, Problem>> => {
    const store = await opening;
    if (!store.ok) return fail(problemOf(store.error));
    const sets: ShownSet[] = [];
    let damaged = 0;
    let after: ListCursor | null = null;
    do {
      const next: Awaited<ReturnType<SetStore['list']>> = await store.value.list(
        after ? { limit: PAGE, after } : { limit: PAGE },
      );
      if (!next.ok) return fail(problemOf(next.error));
      sets.push(...next.value.sets.map(shown));
      damaged += next.value.damaged.length;
      after = next.value.next;
    } while (after);
    return ok({ sets, damaged });
  };

  return {
    sets: all,
    set: read,
    async change(id, change) {
      const store = await opening;
      if (!store.ok) return fail(problemOf(store.error));
      const written = await store.value.edit(editOf(id, change));
      return written.ok ? read(id) : fail(problemOf(written.error));
    },
    async remove(id) {
      if (unstored.delete(id)) return ok(null);
      const store = await opening;
      if (!store.ok) return fail(problemOf(store.error));
      const removed = await store.value.remove(id);
      return removed.ok ? ok(null) : fail(problemOf(removed.error));
    },
  };
}
