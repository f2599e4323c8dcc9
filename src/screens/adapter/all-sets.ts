import type { ListCursor, SetPage, SetStore } from '../../record/set-store.ts';
import type { StoreError } from '../../record/store-error.ts';
import { ok, type Result } from '../../result.ts';

/** How many sets are read at a time. */
const PAGE = 100;

/** Every stored set, newest first, and those that can't be read. */
export async function allSets(store: Pick<SetStore, 'list'>): Promise<Result<Omit<SetPage, 'next'>, StoreError>> {
  const sets: SetPage['sets'][number][] = [];
  const damaged: SetPage['damaged'][number][] = [];
  let after: ListCursor | null = null;
  do {
    const next: Awaited<ReturnType<SetStore['list']>> = await store.list({ limit: PAGE, ...(after ? { after } : {}) });
    if (!next.ok) return next;
    sets.push(...next.value.sets);
    damaged.push(...next.value.damaged);
    after = next.value.next;
  } while (after);
  return ok({ sets, damaged });
}
