import { IDBFactory, IDBKeyRange } from 'fake-indexeddb';
import type { StorePlatform } from '../../src/record/database.ts';

type Callback = (lock: Lock | null) => unknown;

/** A page of a browser: it shares database and locks with the others, and loses its locks when it crashes. */
export interface FakePage extends StorePlatform {
  readonly crash: () => void;
}

interface Holder {
  readonly page: symbol;
  readonly mode: LockMode;
}

/** A browser with Web Locks as far as the store uses them: exclusive or shared, `ifAvailable` or waiting until `signal`, in their order. */
export function fakeBrowser(): { readonly page: () => FakePage } {
  const indexedDB = new IDBFactory();
  const holders = new Map<string, Holder[]>();
  const waiting = new Map<string, symbol[]>();
  const freed = new EventTarget();

  const isFree = (name: string, mode: LockMode): boolean => {
    const held = holders.get(name) ?? [];
    return held.length === 0 || (mode === 'shared' && held.every((holder) => holder.mode === 'shared'));
  };

  const page = (): FakePage => {
    const me = Symbol('page');
    const letGo = (name: string, gone: (holder: Holder) => boolean) => {
      holders.set(
        name,
        (holders.get(name) ?? []).filter((holder) => !gone(holder)),
      );
      freed.dispatchEvent(new Event('freed'));
    };
    const request = async (name: string, { ifAvailable, signal, mode = 'exclusive' }: LockOptions, callback: Callback) => {
      const turn = Symbol('turn');
      const queue = waiting.get(name) ?? [];
      waiting.set(name, queue);
      if ((!isFree(name, mode) || queue.length > 0) && ifAvailable) return callback(null);
      queue.push(turn);
      try {
        while (!isFree(name, mode) || queue[0] !== turn) {
          await new Promise<void>((resolve, reject) => {
            freed.addEventListener('freed', () => resolve(), { once: true });
            signal?.addEventListener('abort', () => reject(signal.reason), { once: true });
          });
        }
      } finally {
        queue.splice(queue.indexOf(turn), 1);
        queueMicrotask(() => freed.dispatchEvent(new Event('freed')));
      }
      const mine: Holder = { page: me, mode };
      holders.set(name, [...(holders.get(name) ?? []), mine]);
      try {
        return await callback({ name, mode });
      } finally {
        letGo(name, (holder) => holder === mine);
      }
    };
    return {
      indexedDB,
      IDBKeyRange,
      crypto: globalThis.crypto,
      locks: { request } as StorePlatform['locks'],
      crash: () => {
        for (const name of holders.keys()) letGo(name, (holder) => holder.page === me);
      },
    };
  };
  return { page };
}
