import type { StorePlatform } from './database.ts';

/**
 * Tells a set that is running from one whose page has closed: whoever runs a set holds a Web Lock named for it, and the browser lets
 * the lock go when the page closes or crashes. No heartbeat, no clock.
 */
export interface SetLocks {
  /** Takes the set's lock until `release`; false when another page has it. */
  readonly hold: (setId: string) => Promise<boolean>;
  readonly release: (setId: string) => void;
  readonly releaseAll: () => void;
  /** How many are held here. */
  readonly held: () => number;
  /** Runs `then` under the set's lock if nobody holds it, or no longer after `patienceMs`. */
  readonly ifAbandoned: (setId: string, patienceMs: number, then: () => Promise<void>) => Promise<void>;
}

const lockName = (setId: string): string => `evenside-set-${setId}`;

export function setLocks(locks: StorePlatform['locks'], onAllReleased: () => void): SetLocks {
  const releases = new Map<string, () => void>();
  const release = (setId: string) => {
    const go = releases.get(setId);
    releases.delete(setId);
    go?.();
    if (go && releases.size === 0) onAllReleased();
  };
  return {
    hold: (setId) =>
      new Promise((resolve, reject) => {
        if (releases.has(setId)) return resolve(true);
        const whileHeld = (lock: Lock | null): Promise<void> | undefined => {
          resolve(lock !== null);
          if (!lock) return undefined;
          return new Promise((go) => releases.set(setId, go));
        };
        locks.request(lockName(setId), { ifAvailable: true }, whileHeld).catch(reject);
      }),
    release,
    releaseAll: () => {
      for (const setId of [...releases.keys()]) release(setId);
    },
    held: () => releases.size,
    ifAbandoned: async (setId, patienceMs, then) => {
      if (releases.has(setId)) return;
      if (patienceMs === 0) {
        await locks.request(lockName(setId), { ifAvailable: true }, async (lock) => {
          if (lock) await then();
        });
        return;
      }
      const signal = AbortSignal.timeout(patienceMs);
      let given = false;
      const whenFree = async () => {
        given = true;
        await then();
      };
      await locks.request(lockName(setId), { signal }, whenFree).catch((cause: unknown) => {
        // Running out of patience means that the set runs; what `then` throws is its caller's.
        if (given || !signal.aborted) throw cause;
      });
    },
  };
}
