import type { StoreLock } from '../../../src/record/lock/store-lock.ts';
import { openLockableStore } from '../../../src/record/open-store.ts';
import type { Store } from '../../../src/record/store.ts';
import { type FakePage, fakeBrowser } from '../fake-browser.ts';
import { wentWell } from '../went-well.ts';
import { FEW_ROUNDS, PASSPHRASE } from './opened-with-lock.ts';
import { fill, told } from './seeded-store.ts';

/** The store of a page, as its lock leaves it. */
export const opened = async (page: FakePage) => wentWell(await openLockableStore(page, undefined, FEW_ROUNDS));
/** The same, its lock opened. */
export const unlocked = async (
  page: FakePage,
  passphrase = PASSPHRASE,
): Promise<{ readonly lock: StoreLock; readonly store: Store }> => {
  const { lock, store } = await opened(page);
  wentWell(await lock.unlock(passphrase));
  return { lock, store: wentWell(await store) };
};

/** A page with a filled store, its lock still off. */
export async function filled(sets = 3) {
  const browser = fakeBrowser();
  const page = browser.page();
  const { lock, store } = await opened(page);
  const open = wentWell(await store);
  await fill(open, sets);
  return { browser, page, lock, store: open, before: await told(open) };
}
