/** The parts of the page that keeping the screen on needs. */
export interface WakeLockPlatform {
  readonly wakeLock: Pick<WakeLock, 'request'>;
  readonly document: Pick<Document, 'visibilityState' | 'addEventListener' | 'removeEventListener'>;
}

const here = (): WakeLockPlatform | null =>
  typeof document !== 'undefined' && 'wakeLock' in navigator ? { wakeLock: navigator.wakeLock, document } : null;

/** A lock that was lost while the page shows is asked for again, but no sooner after the last time. Chosen: a browser that takes it at once is left alone. */
const ASK_AGAIN_MS = 10_000;

/**
 * Keeps the screen on: the person is three metres away with full hands. The browser takes the lock away from a hidden page, and when the battery is low: it is
 * asked for again when the page shows, and a while after. Where it is refused the screen dims as usual.
 * @param onKept told whether the screen stays on, whenever that changes while the page shows
 * @returns lets the screen go
 */
export function keepScreenOn(
  onKept: (kept: boolean) => void = () => undefined,
  platform: WakeLockPlatform | null = here(),
): () => void {
  if (!platform) {
    onKept(false);
    return () => undefined;
  }
  const { wakeLock, document } = platform;
  let over = false;
  let lock: WakeLockSentinel | null = null;
  let timer: ReturnType<typeof setTimeout> | undefined;
  const letGo = () => {
    const held = lock;
    lock = null;
    held?.release().catch(() => undefined);
  };
  const without = () => {
    if (over || document.visibilityState !== 'visible') return;
    onKept(false);
    clearTimeout(timer);
    timer = setTimeout(ask, ASK_AGAIN_MS);
  };
  const ask = async () => {
    if (over || document.visibilityState !== 'visible') return;
    try {
      const given = await wakeLock.request('screen');
      letGo();
      if (over) {
        given.release().catch(() => undefined);
        return;
      }
      lock = given;
      given.addEventListener('release', () => {
        if (lock !== given) return;
        lock = null;
        without();
      });
      onKept(true);
    } catch {
      // A low battery or a setting refuses.
      without();
    }
  };
  document.addEventListener('visibilitychange', ask);
  void ask();
  return () => {
    over = true;
    clearTimeout(timer);
    document.removeEventListener('visibilitychange', ask);
    letGo();
  };
}
