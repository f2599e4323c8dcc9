import type { Page } from 'playwright-core';

export interface StoredRep {
  readonly rangeDeg: number;
  readonly peakMs: number;
  readonly complete: boolean;
}

interface StoredResult {
  readonly setId: string;
  /** ISO 8601: when counting began. */
  readonly startedAt: string;
  readonly result: { readonly reps: readonly StoredRep[] };
}

/** What is on the disk of each measured set, in the order in which they began. */
export const storedResults = (page: Page) =>
  page.evaluate(
    () =>
      new Promise<readonly StoredResult[]>((done, failed) => {
        const open = indexedDB.open('evenside');
        open.onerror = () => failed(open.error);
        open.onsuccess = () => {
          const reading = open.result.transaction(['sets', 'results']);
          const sets = reading.objectStore('sets').getAll();
          const results = reading.objectStore('results').getAll();
          reading.onabort = () => failed(reading.error);
          reading.oncomplete = () => {
            const startedAt = new Map(sets.result.map((set) => [set.id, set.startedAt]));
            const rows = results.result.map(({ setId, result }) => ({ setId, result, startedAt: startedAt.get(setId) }));
            done(rows.sort((a, b) => (a.startedAt < b.startedAt ? -1 : 1)));
          };
        };
      }),
  );
