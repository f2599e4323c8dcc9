import { fail, ok, type Result } from '../../result.ts';
import type { Database } from '../database.ts';
import { type StoreError, storeErrorOf } from '../store-error.ts';
import type { LockError } from './lock-error.ts';
import { LOCK_ID } from './lock-place.ts';
import { lockRecord } from './lock-record.ts';

import type { PageLocks } from './page-locks.ts';
import { isShort } from './passphrase.ts';
import { rewriteRows } from './rewrite-rows.ts';
import * as cipher from './row-cipher.ts';
import { sameBytes } from './same-bytes.ts';
import type { Vault } from './vault.ts';
import { type LockCrypto, newKey, unwrapped, wrapped } from './wrapped-key.ts';

/**
 * `part`: unlocked, but turning it on or off broke off, so that rows of both kinds are there. `stale`: another page has changed it, or all was erased; the
 * page must be loaded anew.
 */
export type LockState = 'off' | 'locked' | 'open' | 'part' | 'stale';

type OnProgress = (share: number) => void;

/** The passphrase lock of the whole store. */
export interface StoreLock {
  readonly state: () => LockState;
  /** Opens the store. What broke off is finished first, telling the share that is done. */
  readonly unlock: (passphrase: string, onProgress?: OnProgress) => Promise<Result<void, LockError>>;
  /** Seals every row. Broken off, it goes on at the next `unlock` or `finish`. */
  readonly turnOn: (passphrase: string, onProgress?: OnProgress) => Promise<Result<void, LockError>>;
  readonly turnOff: (passphrase: string, onProgress?: OnProgress) => Promise<Result<void, LockError>>;
  /** Goes on with what broke off. */
  readonly finish: (onProgress?: OnProgress) => Promise<Result<void, LockError>>;
  /** Another passphrase for the same key: no row is touched. */
  readonly change: (old: string, next: string) => Promise<Result<void, LockError>>;
  /** Forgets the key. Calls on the store fail from then on until `unlock`. */
  readonly lockNow: () => void;
  /** Deletes the whole database. */
  readonly erase: () => Promise<Result<void, LockError>>;
}

export interface LockNeeds {
  readonly db: Database;
  readonly vault: Vault;
  readonly pages: PageLocks;
  readonly crypto: LockCrypto;
  /** Rounds of PBKDF2 for a new passphrase. */
  readonly rounds: number;
  /** The newest version of the database. */
  readonly newest: number;
  /** Whether a set runs in this page. */
  readonly running: () => boolean;
  /** What must be done before the unlocked store is used. */
  readonly onUnlocked: () => Promise<StoreError | null>;
}

/** How long another page may take to close. Chosen: after a reload its locks were seen to be free within 20 ms. */
const CLOSING_MS = 500;

/** @param locked whether the database, which is open, has a lock */
export function storeLock(needs: LockNeeds, locked: boolean): StoreLock {
  const { db, vault, pages, crypto, rounds, newest } = needs;
  let state: LockState = locked ? 'locked' : 'off';

  const attempt = async (call: () => Promise<Result<void, LockError>>): Promise<Result<void, LockError>> => {
    try {
      return await call();
    } catch (cause) {
      return fail(storeErrorOf(cause));
    }
  };

  const { readRow, amended } = lockRecord(db);

  const stale = (): Result<never, LockError> => {
    vault.set({ kind: 'locked' });
    state = 'stale';
    return fail({ kind: 'lock-changed' });
  };

  /** Rewrites every row as the lock's row says, and then says that it is done. */
  const finish = async (onProgress: OnProgress): Promise<Result<void, LockError>> => {
    const row = await readRow();
    if (!row.ok) return row;
    if (!row.value) return stale();
    state = 'part';
    await rewriteRows(db, onProgress);
    if (row.value.state === 'unsealing') {
      await db.lock.delete(LOCK_ID);
      vault.set({ kind: 'plain' });
      state = 'off';
      return ok(undefined);
    }
    const done = await amended(row.value, { state: 'on', version: newest });
    if (done.ok) state = 'open';
    return done;
  };

  /**
   * Runs `body` while no other page is open. Until then this page has no share either, and another one may turn the lock on or off: nothing is read or
   * written meanwhile, and it is looked at again afterwards.
   */
  const alone = (body: () => Promise<Result<void, LockError>>): Promise<Result<void, LockError>> =>
    attempt(async () => {
      if (needs.running()) return fail({ kind: 'lock-set-running' });
      const access = vault.access();
      vault.set({ kind: 'locked' });
      const looked = async () => {
        if (((await db.lock.get(LOCK_ID)) === undefined) !== (state === 'off')) return false;
        vault.set(access);
        return true;
      };
      const done = await pages.alone(CLOSING_MS, async () => ((await looked()) ? body() : stale()));
      if (done) return done.value;
      return (await looked()) ? fail({ kind: 'lock-other-tabs' }) : stale();
    });

  return {
    state: () => state,
    unlock: (passphrase, onProgress = () => undefined) =>
      attempt(async () => {
        if (state !== 'locked') return ok(undefined);
        const row = await readRow();
        if (!row.ok) return row;
        if (!row.value) return stale();
        const key = await unwrapped(crypto, row.value, passphrase);
        if (!key) return fail({ kind: 'lock-wrong' });
        vault.set({ kind: 'keyed', key, cipher, seals: row.value.state !== 'unsealing' });
        const whole = row.value.state === 'on' && row.value.version === newest;
        const finished = whole ? ok(undefined) : await attempt(() => finish(onProgress));
        if (whole) state = 'open';
        // Indexes that came with a newer shape know none of the rows that were not rewritten.
        const unfit = !finished.ok && row.value.version < newest ? finished.error : await needs.onUnlocked();
        if (!unfit) return ok(undefined);
        vault.set({ kind: 'locked' });
        state = 'locked';
        return fail(unfit);
      }),
    turnOn: async (passphrase, onProgress = () => undefined) => {
      if (state !== 'off') throw new Error(`turnOn requires the lock to be off, got ${state}`);
      return alone(async () => {
        if (isShort(passphrase)) return fail({ kind: 'lock-short' });
        const key = newKey(crypto);
        const made = await wrapped(crypto, key, passphrase, rounds);
        await db.lock.add({ id: LOCK_ID, schema: 1, ...made, state: 'sealing', version: newest });
        // Nothing is sealed under a key that can't be had back.
        const back = await readRow();
        const opened = back.ok && back.value ? await unwrapped(crypto, back.value, passphrase) : null;
        if (!opened || !sameBytes(opened, key)) {
          await db.lock.delete(LOCK_ID);
          return fail({ kind: 'store-failed', detail: 'the key could not be read back' });
        }
        vault.set({ kind: 'keyed', key, cipher, seals: true });
        return finish(onProgress);
      });
    },
    turnOff: (passphrase, onProgress = () => undefined) =>
      alone(async () => {
        const row = await readRow();
        if (!row.ok) return row;
        if (!row.value) return stale();
        const key = await unwrapped(crypto, row.value, passphrase);
        if (!key) return fail({ kind: 'lock-wrong' });
        const said = await amended(row.value, { state: 'unsealing' });
        if (!said.ok) return said;
        vault.set({ kind: 'keyed', key, cipher, seals: false });
        return finish(onProgress);
      }),
    finish: (onProgress = () => undefined) => attempt(() => finish(onProgress)),
    change: (old, next) =>
      attempt(async () => {
        if (isShort(next)) return fail({ kind: 'lock-short' });
        const row = await readRow();
        if (!row.ok) return row;
        if (!row.value) return stale();
        const key = await unwrapped(crypto, row.value, old);
        if (!key) return fail({ kind: 'lock-wrong' });
        const made = await wrapped(crypto, key, next, rounds);
        const back = await unwrapped(crypto, made, next);
        if (!back || !sameBytes(back, key)) return fail({ kind: 'store-failed', detail: 'the key could not be wrapped anew' });
        return amended(row.value, made);
      }),
    lockNow() {
      if (state !== 'open' && state !== 'part') return;
      const access = vault.access();
      vault.set({ kind: 'locked' });
      state = 'locked';
      // Best effort: what the browser copied elsewhere, it alone knows.
      if (access.kind === 'keyed') access.key.fill(0);
    },
    erase: () =>
      alone(async () => {
        await db.delete();
        state = 'stale';
        return ok(undefined);
      }),
  };
}
