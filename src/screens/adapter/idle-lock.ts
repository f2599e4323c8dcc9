/** Minutes without a touch or a key, in any tab, after which it locks. Chosen: longer than reading a report, shorter than a lunch. */
const IDLE_MS = 15 * 60_000;

/** How often it is looked; a sleeping machine's timers stand still, so that it is also looked whenever the page is shown again. Chosen. */
const LOOK_MS = 15_000;

/** Other tabs are told of a touch no more often than this. Chosen. */
const TELL_MS = 20_000;

const TOUCHES = ['pointerdown', 'pointermove', 'keydown', 'wheel', 'touchstart'] as const;

type Told = 'lock' | 'touch';
const isTold = (data: unknown): data is Told => data === 'lock' || data === 'touch';

export interface IdleLockNeeds {
  readonly isOpen: () => boolean;
  /** Whether something goes on that must not be broken off. */
  readonly busy: () => boolean;
  readonly lockHere: () => void;
  /** ms, running on while the machine sleeps. */
  readonly now: () => number;
  readonly channel: Pick<BroadcastChannel, 'postMessage' | 'addEventListener'>;
}

export interface IdleLock {
  /** Tells the other tabs to lock. Those in which something goes on do so when it is over. */
  readonly lockOthers: () => void;
  /** Begins counting anew, as when it was just unlocked. */
  readonly touched: () => void;
}

/** Locks an open page that nobody touches, and one whose other tabs are told to. */
export function idleLock({ isOpen, busy, lockHere, now, channel }: IdleLockNeeds): IdleLock {
  let last = now();
  let toldAt = Number.NEGATIVE_INFINITY;
  let asked = false;

  const look = () => {
    if (!isOpen()) return;
    if (busy()) {
      // What went on without a touch was no idling.
      last = now();
      return;
    }
    if (asked || now() - last >= IDLE_MS) lockHere();
  };
  const touched = () => {
    // A touch after the time was up must not come before the look that a machine just woken owes.
    look();
    last = now();
    if (!isOpen() || last - toldAt < TELL_MS) return;
    toldAt = last;
    channel.postMessage('touch' satisfies Told);
  };

  for (const touch of TOUCHES) window.addEventListener(touch, touched, { passive: true, capture: true });
  document.addEventListener('visibilitychange', look);
  setInterval(look, LOOK_MS);
  channel.addEventListener('message', ({ data }) => {
    if (!isTold(data)) return;
    if (data === 'touch') {
      last = now();
      return;
    }
    asked = true;
    look();
  });
  return {
    lockOthers: () => channel.postMessage('lock' satisfies Told),
    touched: () => {
      last = now();
      asked = false;
    },
  };
}
