/** The parts of the page that keeping the screen on needs. */
export interface WakeLockPlatform {
  readonly wakeLock: Pick<WakeLock, 'request'>;
  readonly document: Pick<Document, 'visibilityState' | 'addEventListener' | 'removeEventListener'>;
}

const here = (): WakeLockPlatform | null =>
  typeof document !== 'undefined' && 'wakeLock' in navigator ? { wakeLock: navigator.wakeLock, document } : null;

/**
 * Keeps the screen on: the person is three metres away with full hands. The browser takes the lock away from a hidden page, so it is
 * asked for again when the page shows. Where it is refused the screen dims as usual.
 * @returns lets the screen go
 */
export function keepScreenOn(platform: WakeLockPlatform | null = here()): () => void {
  if (!platform) return () => undefined;
  const { wakeLock, document } = platform;
  let over = false;
  let lock: WakeLockSentinel | null = null;
  const letGo = () => {
    lock?.release().catch(() => undefined);
    lock = null;
  };
  const ask = async () => {
    if (document.visibilityState !== 'visible') return;
    try {
      const given = await wakeLock.request('screen');
      letGo();
      lock = given;
      if (over) letGo();
    } catch {
      // A low battery or a setting refuses: nothing to do.
    }
  };
  document.addEventListener('visibilitychange', ask);
  void ask();
  return () => {
    over = true;
    document.removeEventListener('visibilitychange', ask);
    letGo();
  };
}
