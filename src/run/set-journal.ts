import type { MeasuredRep } from '../measure/set-result.ts';
import type { SetEnding, SetStore } from '../record/set-store.ts';
import type { StoreError } from '../record/store-error.ts';
import type { SetHeader } from '../record/stored-set.ts';
import { fail, ok, type Result } from '../result.ts';

/** A write that takes longer is no longer waited for: somebody is exercising. Chosen: a slow disk takes a tenth of it. */
export const WRITE_LIMIT_MS = 3000;

/**
 * So long a count waits for the disk before it is shown: what was shown is there, however the browser ends. Writing takes 5 to 50 ms on an idle machine. Chosen: later than
 * this a count is felt to lag, and a slow disk is no reason for that.
 */
const SHOWN_WITHIN_MS = 500;

/**
 * Writes one set while it is measured: each repetition as it ends, in order, one write at a time. What can't be written stays pending
 * and goes with the next write. A trouble is told when it comes up, not again for each repetition it holds back, and that it is over once a write went well.
 */
export interface SetJournal {
  readonly begin: () => void;
  readonly add: (rep: MeasuredRep) => void;
  /** Resolves once all that was added is on the disk or can't get there now. */
  readonly settled: () => Promise<void>;
  /** The same, but no longer than a count may be late. */
  readonly soonSettled: () => Promise<void>;
  /** Writes how the set ended. */
  readonly end: (ending: SetEnding) => Promise<Result<void, StoreError>>;
}

type Write = Promise<Result<void, StoreError>>;

/**
 * @param store null: nothing is written
 * @param onTrouble null: it is over
 */
export function setJournal(store: SetStore | null, header: SetHeader, onTrouble: (error: StoreError | null) => void): SetJournal {
  let pending: readonly MeasuredRep[] = [];
  let writing: Promise<void> = Promise.resolve();
  let told: StoreError['kind'] | null = null;
  /** A write is under way that did not come back in time. */
  let stalled = false;

  /** The outcome, or `store-stalled` when there is none in time. The write itself goes on, and may yet come back. */
  const inTime = (write: Write): Write =>
    new Promise((resolve, reject) => {
      const timer = setTimeout(() => {
        stalled = true;
        resolve(fail({ kind: 'store-stalled' }));
      }, WRITE_LIMIT_MS);
      const back = () => {
        clearTimeout(timer);
        stalled = false;
      };
      write.finally(back).then(resolve, reject);
    });
  const heed = (outcome: Result<void, StoreError>) => {
    const kind = outcome.ok ? null : outcome.error.kind;
    if (kind !== told) onTrouble(outcome.ok ? null : outcome.error);
    told = kind;
  };
  const flush = async (to: SetStore) => {
    for (const rep of pending) {
      if (stalled) return;
      const outcome = await inTime(to.append(header, [rep]));
      heed(outcome);
      // One that will never fit must not hold back those after it.
      if (!outcome.ok && outcome.error.kind !== 'store-refused') return;
      pending = pending.filter((other) => other !== rep);
    }
  };
  return {
    begin() {
      if (store) writing = writing.then(async () => heed(await inTime(store.begin(header))));
    },
    add(rep) {
      if (!store) return;
      pending = [...pending, rep];
      writing = writing.then(() => flush(store));
    },
    settled: () => writing,
    soonSettled: () =>
      new Promise((resolve) => {
        const timer = setTimeout(resolve, SHOWN_WITHIN_MS);
        writing.finally(() => {
          clearTimeout(timer);
          resolve();
        });
      }),
    async end(ending) {
      await writing;
      if (!store) return ok(undefined);
      await flush(store);
      return inTime(store.end(header, ending));
    },
  };
}
