import type { FrameTaken } from '../capture/between-frames.ts';
import type { FrameSource } from './frame-source.ts';

/** Half of the finest rounding of times in a file, ms: a picture that is due at the very time of one is that one. */
const ROUNDED_MS = 1;

/**
 * A source of which only so many pictures a second come, the others closed unseen: as from a slow camera.
 * @param aSecond more than the source has changes nothing
 */
export const thinnedSource = (source: FrameSource, aSecond: number): FrameSource => ({
  ...source,
  async *frames(): AsyncGenerator<FrameTaken, void, undefined> {
    let taken = 0;
    for await (const frame of source.frames()) {
      if (frame.tMs < (taken * 1000) / aSecond - ROUNDED_MS) {
        frame.image.close();
        continue;
      }
      taken = Math.floor(((frame.tMs + ROUNDED_MS) * aSecond) / 1000) + 1;
      yield frame;
    }
  },
});
