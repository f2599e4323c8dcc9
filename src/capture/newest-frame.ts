import type { Frame } from './frame.ts';

/**
 * A letter box for one frame between a camera, which does not wait, and whoever measures. A frame that is not taken before the next one
 * comes is late; nothing queues.
 */
export interface NewestFrame {
  /** Puts a frame in; it is closed after the end, or when it does not come after the one before. */
  readonly offer: (frame: Frame) => void;
  /** The newest frame, as soon as there is one; null after the end. Throws what the end was told. One call at a time. */
  readonly take: () => Promise<Frame | null>;
  /** No more frames. With `cause`, `take` throws it once. */
  readonly end: (cause?: Error) => void;
  /** Frames that came and were closed here. */
  readonly dropped: () => number;
}

/** @param late takes over a frame that was not taken before the next one came; left out: it is closed */
export function newestFrame(late?: (frame: Frame) => void): NewestFrame {
  let waiting: Frame | null = null;
  let taker: { readonly resolve: (frame: Frame | null) => void; readonly reject: (cause: Error) => void } | null = null;
  let ended = false;
  let failure: Error | null = null;
  let lastMs = Number.NEGATIVE_INFINITY;
  let dropped = 0;

  const drop = (frame: Frame | null) => {
    if (!frame) return;
    frame.image.close();
    dropped += 1;
  };
  return {
    offer(frame) {
      if (ended || frame.tMs <= lastMs) return drop(frame);
      lastMs = frame.tMs;
      if (taker) {
        taker.resolve(frame);
        taker = null;
        return;
      }
      if (waiting && late) late(waiting);
      else drop(waiting);
      waiting = frame;
    },
    take() {
      if (failure) {
        const cause = failure;
        failure = null;
        return Promise.reject(cause);
      }
      if (ended) return Promise.resolve(null);
      const frame = waiting;
      waiting = null;
      if (frame) return Promise.resolve(frame);
      return new Promise((resolve, reject) => {
        taker = { resolve, reject };
      });
    },
    end(cause) {
      if (ended) return;
      ended = true;
      drop(waiting);
      waiting = null;
      if (taker && cause) taker.reject(cause);
      else if (taker) taker.resolve(null);
      else failure = cause ?? null;
      taker = null;
    },
    dropped: () => dropped,
  };
}
