import type { Damaged } from '../../record/diary-store.ts';
import type { ListCursor, SetStore } from '../../record/set-store.ts';
import type { Store } from '../../record/store.ts';
import type { StoreError } from '../../record/store-error.ts';
import type { StoredSet } from '../../record/stored-set.ts';
import { fail, ok, type Result } from '../../result.ts';
import type { Everything, Problem } from '../services.ts';
import { problemOf } from './problem-of.ts';

/** How many sets are read at a time. */
const PAGE = 100;

/** Reads every set and the whole diary. */
export async function everythingIn(opening: Promise<Result<Store, StoreError>>): Promise<Result<Everything, Problem>> {
  const store = await opening;
  if (!store.ok) return fail(problemOf(store.error));
  const sets: StoredSet[] = [];
  const damaged: Damaged[] = [];
  let after: ListCursor | null = null;
  do {
    const next: Awaited<ReturnType<SetStore['list']>> = await store.value.list({ limit: PAGE, ...(after ? { after } : {}) });
    if (!next.ok) return fail(problemOf(next.error));
    sets.push(...next.value.sets);
    damaged.push(...next.value.damaged);
    after = next.value.next;
  } while (after);
  const diary = await store.value.diary.all();
  if (!diary.ok) return fail(problemOf(diary.error));
  return ok({ sets, diary: diary.value.entries, damaged: [...damaged, ...diary.value.damaged] });
}
