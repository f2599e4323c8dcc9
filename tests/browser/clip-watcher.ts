import { afterAll, beforeAll } from 'vitest';
import type { WatchOrder } from '../../src/cli/page-protocol.ts';
import { type ClipWatcher, startClipWatcher, type WatchedClip, type WatchFailure } from '../../src/cli/watch-clip.ts';
import type { SetResult } from '../../src/measure/set-result.ts';
import { measureRecording } from '../../src/record/measure-recording.ts';
import { decodeRecording } from '../../src/record/recording.ts';
import type { Result } from '../../src/result.ts';

/** The command line's own way from a video to a result, for the tests of one file. */
export interface ClipsUnderTest {
  readonly watch: (path: string, order: WatchOrder) => Promise<Result<WatchedClip, WatchFailure>>;
  /** Throws when the clip can't be watched, or its recording not be read back. */
  readonly measured: (path: string, order: WatchOrder) => Promise<SetResult>;
}

/** Starts one browser for all clips of the calling file; call it at the top of the file. */
export function clipWatcherForTests(): ClipsUnderTest {
  let running: ClipWatcher | null = null;
  beforeAll(async () => {
    const started = await startClipWatcher(() => undefined);
    if (!started.ok) throw new Error(started.error.words);
    running = started.value;
  });
  afterAll(() => running?.close());

  const watch = (path: string, order: WatchOrder) => {
    if (!running) throw new Error('clipWatcherForTests requires its hooks to have run: watch clips inside tests');
    return running.watch(path, order, () => undefined);
  };
  return {
    watch,
    async measured(path, order) {
      const watched = await watch(path, order);
      if (!watched.ok) throw new Error(watched.error.words);
      const recording = decodeRecording(watched.value.recording);
      if (!recording.ok) throw new Error(recording.error.kind);
      return measureRecording(recording.value);
    },
  };
}
