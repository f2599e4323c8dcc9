import { betweenFrames } from '../../src/capture/between-frames.ts';
import type { Frame } from '../../src/capture/frame.ts';
import { newestFrame } from '../../src/capture/newest-frame.ts';
import type { FrameSource } from '../../src/run/frame-source.ts';
import { SIZE } from './scripted-set.ts';

/** A camera that gives a picture every 33 ms and waits for nobody. */
export function liveCamera(frame: (tMs: number) => Frame): FrameSource & { readonly dropped: () => number } {
  const late = betweenFrames(async () => ({ width: 1, height: 1, data: new Uint8Array(1) }));
  const box = newestFrame(late.add);
  let shown = 0;
  const timer = setInterval(() => box.offer(frame(33 * ++shown)), 33);
  const stop = () => {
    clearInterval(timer);
    box.end();
  };
  return {
    size: SIZE,
    live: true,
    stop,
    dropped: () => box.dropped() + late.dropped(),
    async *frames() {
      for (let next = await box.take(); next; next = await box.take()) yield { ...next, between: await late.take() };
    },
  };
}
