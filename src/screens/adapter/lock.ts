import { createStore } from 'zustand/vanilla';
import type { LockError } from '../../record/lock/lock-error.ts';
import type { StoreLock } from '../../record/lock/store-lock.ts';
import type { LockableStore } from '../../record/open-store.ts';
import type { StoreError } from '../../record/store-error.ts';
import { fail, ok, type Result } from '../../result.ts';
import { stopKeeping } from '../../run/bundle-cache.ts';
import type { LockServices, ShownLock } from '../lock/lock-services.ts';
import type { IdleLock } from './idle-lock.ts';

const reload = (): void => window.location.reload();

/**
 * The lock as the screens ask for it.
 * @param busy whether a set runs, or was measured and is in this page alone
 */
export function lockServices(opening: Promise<Result<LockableStore, StoreError>>, busy: () => boolean): LockServices {
  const state = createStore<ShownLock>(() => 'opening');
  let held = 0;
  let known: StoreLock | null = null;

  const show = (lock: StoreLock) => {
    const now = lock.state();
    if (now === 'stale') reload();
    else state.setState(now, true);
  };
  opening.then((opened) => {
    if (opened.ok) {
      known = opened.value.lock;
      show(known);
    } else state.setState('off', true);
  });

  const lockHere = () => {
    known?.lockNow();
    reload();
  };
  let idle: IdleLock | null = null;
  /** Loaded before anything is unlocked: without it nothing would lock by itself. */
  const watched = async (): Promise<IdleLock> => {
    const { idleLock } = await import('./idle-lock.ts');
    idle ??= idleLock({
      isOpen: () => ['open', 'part'].includes(state.getState()),
      busy: () => held > 0 || busy(),
      lockHere,
      now: Date.now,
      channel: new BroadcastChannel('evenside-lock'),
    });
    return idle;
  };

  const through = async (
    call: (lock: StoreLock) => Promise<Result<void, LockError>>,
  ): Promise<Result<null, Pick<LockError, 'kind'>>> => {
    const opened = await opening;
    if (!opened.ok) return fail({ kind: opened.error.kind });
    if (busy()) return fail({ kind: 'lock-set-running' });
    const watch = await watched().catch(() => null);
    if (!watch) return fail({ kind: 'store-failed' });
    held += 1;
    try {
      const done = await call(opened.value.lock);
      return done.ok ? ok(null) : fail({ kind: done.error.kind });
    } finally {
      held -= 1;
      watch.touched();
      show(opened.value.lock);
    }
  };

  return {
    state,
    unlock: (passphrase, onProgress) => through((lock) => lock.unlock(passphrase, onProgress)),
    turnOn: (passphrase, onProgress) => through((lock) => lock.turnOn(passphrase, onProgress)),
    turnOff: (passphrase, onProgress) => through((lock) => lock.turnOff(passphrase, onProgress)),
    finish: (onProgress) => through((lock) => lock.finish(onProgress)),
    change: (old, next) => through((lock) => lock.change(old, next)),
    lockNow() {
      idle?.lockOthers();
      lockHere();
    },
    async erase() {
      const opened = await opening;
      if (!opened.ok) return fail({ kind: opened.error.kind });
      if (busy()) return fail({ kind: 'lock-set-running' });
      // What is shown afterwards is loaded before: there may be no network, and then nothing is left to load it from.
      const [{ forgetProgram }] = await Promise.all([import('./erase-here.ts'), import('../lock/erased-screen.tsx')]);
      const done = await opened.value.lock.erase();
      if (!done.ok) {
        show(opened.value.lock);
        return fail({ kind: done.error.kind });
      }
      stopKeeping();
      await forgetProgram();
      state.setState('erased', true);
      return ok(null);
    },
    keepOpen() {
      held += 1;
      let kept = true;
      return () => {
        if (kept) held -= 1;
        kept = false;
      };
    },
  };
}
