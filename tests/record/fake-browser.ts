import { IDBFactory, IDBKeyRange } from 'fake-indexeddb';
import type { StorePlatform } from '../../src/record/database.ts';

type Callback = (lock: Lock | null) => unknown;

/** A page of a browser: it shares database and locks with the others, and loses its locks when it crashes. */
export interface FakePage extends StorePlatform {
  readonly crash: () => void;
}

/** A browser with Web Locks as far as the store uses them: exclusive, `ifAvailable` or waiting until `signal`. */
export function fakeBrowser(): { readonly page: () => FakePage } {
  const indexedDB = new IDBFactory();
  const holders = new Map<string, symbol>();
  const freed = new EventTarget();

  const page = (): FakePage => {
    const me = Symbol('page');
    const letGo = (name: string) => {
      if (holders.get(name) === me) holders.delete(name);
      freed.dispatchEvent(new Event('freed'));
    };
    const request = async (name: string, { ifAvailable, signal }: LockOptions, callback: Callback) => {
      if (holders.has(name) && ifAvailable) return callback(null);
      while (holders.has(name)) {
        await new Promise<void>((resolve, reject) => {
          freed.addEventListener('freed', () => resolve(), { once: true });
          signal?.addEventListener('abort', () => reject(signal.reason), { once: true });
        });
      }
      holders.set(name, me);
      try {
        return await callback({ name, mode: 'exclusive' });
      } finally {
        letGo(name);
      }
    };
    return {
      indexedDB,
      IDBKeyRange,
      locks: { request } as StorePlatform['locks'],
      crash: () => {
        for (const name of [...holders.keys()]) letGo(name);
      },
    };
  };
  return { page };
}
