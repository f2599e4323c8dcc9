import type { BetweenFrame, FrameTaken } from '../capture/between-frames.ts';
import type { Observation } from '../measure/observation.ts';
import type { FrameSource } from './frame-source.ts';

/** Thrown when the pose model fails on a frame. */
export class PoseFailed extends Error {
  override readonly name = 'PoseFailed';
}

const poseFailed = (cause: unknown): never => {
  throw new PoseFailed(cause instanceof Error ? cause.message : String(cause), { cause });
};

/** Who looks at frames: the pose worker's client. */
interface Observer {
  readonly begin: () => Promise<void>;
  /** What was seen in pictures that no pose was looked for in, in order of time. Asked before the frame that they came before. */
  readonly follow: (between: readonly BetweenFrame[]) => Promise<readonly Observation[]>;
  /** What was seen in the frame itself. */
  readonly observe: (frame: FrameTaken) => Promise<Observation>;
}

type Next = Promise<IteratorResult<FrameTaken, void>>;

/**
 * What `observer` sees in the frames of `source`, one frame in work at a time. A file's next frame is decoded while the one before is
 * looked at; a camera's is taken only then, so that it is fresh, and brings along what is left of the pictures in between. Ends with the source or when `signal` aborts, without waiting for a frame
 * in work; then the source is stopped, and a frame nobody has taken is closed.
 * What was seen in the pictures in between is told before the frame itself, which takes ten times as long: a repetition that ended in one of them is heard of
 * that much sooner.
 * @throws PoseFailed, and what the source throws
 */
export async function* observations(
  source: FrameSource,
  observer: Observer,
  signal: AbortSignal,
): AsyncGenerator<Observation, void, undefined> {
  const stopped = new Promise<null>((resolve) => {
    if (signal.aborted) resolve(null);
    signal.addEventListener('abort', () => resolve(null), { once: true });
  });
  const frames = source.frames();
  let ahead: Next | null = null;
  const fetch = (): Next => {
    const next = frames.next();
    // A source that breaks while a frame is in work is heard of when its turn comes.
    next.catch(() => undefined);
    return next;
  };
  try {
    if ((await Promise.race([observer.begin().then(() => true, poseFailed), stopped])) === null) return;
    for (;;) {
      ahead ??= fetch();
      const next = await Promise.race([ahead, stopped]);
      if (next === null) return;
      ahead = null;
      if (next.done) return;
      const { between = [] } = next.value;
      const following = between.length > 0 ? observer.follow(between).catch(poseFailed) : null;
      const observing = observer.observe(next.value).catch(poseFailed);
      for (const each of [following, observing]) each?.catch(() => undefined);
      if (!source.live) ahead = fetch();
      const followed = following && (await Promise.race([following, stopped]));
      if (followed) yield* followed;
      const seen = await Promise.race([observing, stopped]);
      if (seen === null) return;
      yield seen;
    }
  } finally {
    ahead?.then((next) => next.done || next.value.image.close()).catch(() => undefined);
    // Asked to return first, so that a stopped source has no chance to yield again; not waited for, since a hung decoder never answers.
    frames.return().catch(() => undefined);
    source.stop();
  }
}
