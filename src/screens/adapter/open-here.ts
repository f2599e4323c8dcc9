import { type LockableStore, openLockableStore } from '../../record/open-store.ts';
import type { StoreError } from '../../record/store-error.ts';
import type { Result } from '../../result.ts';

/** The store of this page. */
export interface StoreHere {
  readonly opened: Result<LockableStore, StoreError>;
  /** True: the browser keeps nothing, and the store is in the page's memory. */
  readonly inMemory: boolean;
}

/** Asks before the page closes with all that is in its memory alone. Browsers show words of their own. */
const askBeforeLeaving = (): void => window.addEventListener('beforeunload', (event) => event.preventDefault());

/** Opens the store, in the memory where the browser has no place for one, as in some private windows. */
export async function openHere(): Promise<StoreHere> {
  const opened = await openLockableStore();
  if (opened.ok || opened.error.kind !== 'store-unavailable') return { opened, inMemory: false };
  const inMemory = await import('../../record/memory-store.ts').then(
    (memory) => memory.openMemoryStore(),
    () => opened,
  );
  if (inMemory.ok) askBeforeLeaving();
  return { opened: inMemory, inMemory: inMemory.ok };
}
