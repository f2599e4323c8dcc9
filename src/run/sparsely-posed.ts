import type { BetweenFrame, FrameTaken } from '../capture/between-frames.ts';
import { readLuma } from '../capture/luma.ts';
import type { FrameSource } from './frame-source.ts';

/**
 * A source whose pose model is too slow for it: only every so many-th picture comes whole, beginning with the first, with the brightness of those
 * between. As a camera gives them on a slow machine, but the same pictures every time. Those after the last whole one are lost, as a camera's are.
 * @param every a whole number, at least 1
 */
export const sparselyPosed = (source: FrameSource, every: number, read = readLuma): FrameSource => ({
  ...source,
  async *frames(): AsyncGenerator<FrameTaken, void, undefined> {
    let between: BetweenFrame[] = [];
    let count = 0;
    for await (const frame of source.frames()) {
      if (count++ % every === 0) {
        yield { ...frame, between };
        between = [];
        continue;
      }
      try {
        between.push({ tMs: frame.tMs, luma: await read(frame.image, frame.turn) });
      } finally {
        frame.image.close();
      }
    }
  },
});
