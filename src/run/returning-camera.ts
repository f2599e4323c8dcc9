import type { FrameTaken } from '../capture/between-frames.ts';
import type { CameraError } from '../capture/camera.ts';
import { CameraLost } from '../capture/camera-frames.ts';
import type { Result } from '../result.ts';
import type { FrameSource } from './frame-source.ts';
import { setClock } from './set-clock.ts';

/** Why there is no picture now: it just went, or opening the camera again was refused. */
export type AwayWhy = CameraError | { readonly kind: 'camera-lost' };

export interface ReturningNeeds {
  /** Opens the very same camera again. */
  readonly reopen: () => Promise<Result<FrameSource, CameraError>>;
  /** The camera is away, and why; null: its pictures come again. */
  readonly onAway: (why: AwayWhy | null) => void;
  /** Pictures go on after a break in which the camera itself stayed: the machine slept, or the page was hidden. */
  readonly onBreak: () => void;
  /** Tells when opening it may go better than before: a camera was plugged in, the page shows again. @returns stops telling */
  readonly watchChanges: (onChange: () => void) => () => void;
  /** Whether somebody sees the page: a hidden one may get no pictures. */
  readonly visible: () => boolean;
  /** A clock that goes on while the machine sleeps, ms. */
  readonly wallMs: () => number;
}

/** A camera that may go away in the middle of a set and come back. */
export interface ReturningCamera extends FrameSource {
  /** Tries to open it again now. */
  readonly retry: () => void;
}

/** No picture for this many seconds in which the page was seen and awake: it is as if the cable were out. Chosen: five times what a stalled camera takes. */
const SILENT_S = 5;
/** Seconds after which opening it is tried again without anybody's doing: another program tells nobody that it has let the camera go. Chosen. */
const TRY_AGAIN_S = 3;
const TICK_MS = 1000;

/** Tells after so many of its own ticks; a machine that sleeps has at most one. */
function afterTicks(
  ticks: number,
  counts: () => boolean,
  tell: () => void,
): { readonly again: () => void; readonly stop: () => void } {
  let left = ticks;
  const timer = setInterval(() => {
    if (counts()) left -= 1;
    if (left > 0) return;
    left = ticks;
    tell();
  }, TICK_MS);
  return {
    again: () => {
      left = ticks;
    },
    stop: () => clearInterval(timer),
  };
}

/**
 * A camera's pictures on one clock, also when it goes away and comes back, and when the machine sleeps: a break of any length takes `BREAK_MS` of the set's time, so
 * that no movement crosses it and nobody counts as gone. While it is away it is tried again and again; `stop` ends the waiting.
 * @throws CameraLost (`turned`) when its picture has another shape than before: points would not compare
 */
export function returningCamera(first: FrameSource, needs: ReturningNeeds): ReturningCamera {
  let source = first;
  let stopped = false;
  /** Opens the camera again now, while it is away. */
  let tryNow: () => void = () => undefined;

  const back = async (): Promise<FrameSource | null> => {
    needs.onAway({ kind: 'camera-lost' });
    let asked = false;
    let wake: () => void = () => undefined;
    const hear = () => {
      asked = true;
      wake();
    };
    tryNow = hear;
    const stopWatching = needs.watchChanges(hear);
    let denied = false;
    // A refusal is not repeated by itself: the browser may ask the person each time.
    const timer = afterTicks(TRY_AGAIN_S, () => !denied && needs.visible(), hear);
    try {
      for (;;) {
        asked = false;
        const opened = await needs.reopen();
        if (opened.ok && stopped) opened.value.stop();
        if (stopped) return null;
        if (opened.ok) return opened.value;
        denied = opened.error.kind === 'camera-denied';
        needs.onAway(opened.error);
        while (!asked) {
          await new Promise<void>((resolve) => {
            wake = resolve;
          });
        }
        if (stopped) return null;
      }
    } finally {
      timer.stop();
      stopWatching();
    }
  };

  async function* framesOf(one: FrameSource): AsyncGenerator<FrameTaken, 'ended' | 'away', undefined> {
    let silent = false;
    let awaited = false;
    // Only while a picture is waited for: whoever looks at the last one may take long.
    const watch = afterTicks(
      SILENT_S,
      () => awaited && needs.visible(),
      () => {
        silent = true;
        one.stop();
      },
    );
    const pictures = one.frames();
    try {
      for (;;) {
        awaited = true;
        const next = await pictures.next();
        awaited = false;
        watch.again();
        if (next.done) break;
        yield next.value;
      }
    } catch (cause) {
      if (stopped) return 'ended';
      if (cause instanceof CameraLost && cause.why === 'unplugged') return 'away';
      throw cause;
    } finally {
      watch.stop();
      one.stop();
      // Not waited for: a camera that hangs never answers.
      pictures.return().catch(() => undefined);
    }
    return silent && !stopped ? 'away' : 'ended';
  }

  async function* frames(): AsyncGenerator<FrameTaken, void, undefined> {
    const clock = setClock(needs.wallMs);
    let away = false;
    for (;;) {
      const own = framesOf(source);
      try {
        for (;;) {
          const next = await own.next();
          if (next.done) {
            if (next.value === 'ended') return;
            break;
          }
          const { frame, afterBreak } = clock.read(next.value);
          if (away) needs.onAway(null);
          else if (afterBreak) needs.onBreak();
          away = false;
          yield frame;
        }
      } finally {
        await own.return('ended');
      }
      const again = await back();
      if (!again) return;
      source = again;
      if (again.size.width !== first.size.width || again.size.height !== first.size.height) {
        again.stop();
        throw new CameraLost('turned');
      }
      clock.reopened();
      away = true;
    }
  }

  return {
    size: first.size,
    live: true,
    frames,
    retry: () => tryNow(),
    stop() {
      stopped = true;
      source.stop();
      tryNow();
    },
  };
}
