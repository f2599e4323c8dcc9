import type { Page } from 'playwright-core';

interface StoredRep {
  readonly rangeDeg: number;
  readonly peakMs: number;
  readonly complete: boolean;
}

/** What is on the disk of each measured set, in no order. */
export const storedResults = (page: Page) =>
  page.evaluate(
    () =>
      new Promise<readonly { readonly setId: string; readonly result: { readonly reps: readonly StoredRep[] } }[]>(
        (done, failed) => {
          const open = indexedDB.open('evenside');
          open.onerror = () => failed(open.error);
          open.onsuccess = () => {
            const all = open.result.transaction('results').objectStore('results').getAll();
            all.onsuccess = () => done(all.result);
            all.onerror = () => failed(all.error);
          };
        },
      ),
  );
