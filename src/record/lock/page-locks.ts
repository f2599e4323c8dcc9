import type { StorePlatform } from '../database.ts';

/** Tells whether another page of the program is open: each holds a share of one Web Lock, which the browser takes away when the page closes or crashes. */
export interface PageLocks {
  /** Takes this page's share; false when another page kept all of it for longer than `patienceMs`. */
  readonly enter: (patienceMs: number) => Promise<boolean>;
  /** Runs `body` while no other page is open; null when one still is after `patienceMs`. This page has its share again afterwards. */
  readonly alone: <T>(patienceMs: number, body: () => Promise<T>) => Promise<{ readonly value: T } | null>;
  readonly leave: () => void;
}

const NAME = 'evenside-pages';

export function pageLocks(locks: StorePlatform['locks']): PageLocks {
  let mine: { go: () => void; gone: Promise<unknown> } | null = null;

  const enter = (signal?: AbortSignal): Promise<boolean> =>
    new Promise((resolve, reject) => {
      const share = { go: (): void => undefined, gone: Promise.resolve<unknown>(undefined) };
      const whileHeld = () => {
        mine = share;
        resolve(true);
        return new Promise<void>((end) => {
          share.go = end;
        });
      };
      share.gone = locks
        .request(NAME, { mode: 'shared', ...(signal ? { signal } : {}) }, whileHeld)
        .catch((cause: unknown) => (signal?.aborted ? resolve(false) : reject(cause)));
    });

  const leave = async () => {
    const was = mine;
    mine = null;
    was?.go();
    await was?.gone;
  };

  return {
    enter: (patienceMs) => enter(AbortSignal.timeout(patienceMs)),
    async alone(patienceMs, body) {
      await leave();
      const signal = AbortSignal.timeout(patienceMs);
      let begun = false;
      let back: Promise<boolean> | null = null;
      try {
        return await locks.request(NAME, { mode: 'exclusive', signal }, async () => {
          begun = true;
          try {
            return { value: await body() };
          } finally {
            // Asked for before it is given up, so that nobody comes between.
            back = enter();
          }
        });
      } catch (cause) {
        if (begun || !signal.aborted) throw cause;
        return null;
      } finally {
        await (back ?? enter());
      }
    },
    leave: () => void leave(),
  };
}
