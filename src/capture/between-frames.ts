import type { Ms } from '../units.ts';
import type { Frame } from './frame.ts';
import { type Luma, readLuma } from './luma.ts';

/** All that is kept of a picture which came while another one was looked at: its brightness, upright. */
export interface BetweenFrame {
  readonly tMs: Ms;
  readonly luma: Luma;
}

/** A frame to be looked at whole, and what is left of the pictures since the one before it, in order of time. */
export interface FrameTaken extends Frame {
  /** Left out: there were none. */
  readonly between?: readonly BetweenFrame[];
}

/** Collects the pictures that come while another one is looked at. They are closed at once, so that a camera never runs out of them. */
export interface BetweenFrames {
  /** Takes over `frame` and closes it once its brightness is read. */
  readonly add: (frame: Frame) => void;
  /** What came since the last call, in order of time. Pictures that can't be read are left out. */
  readonly take: () => Promise<readonly BetweenFrame[]>;
  /** Pictures of which nothing was kept. */
  readonly dropped: () => number;
}

/**
 * Kept at most, evenly spread: at 30 pictures a second what comes within 270 ms, three times what the pose model takes on a slow machine.
 * Following the leg in one takes a few milliseconds, so that they hold the next pose up by a tenth of its own time. Chosen.
 */
export const MOST_BETWEEN = 8;
/** Pictures being read at once; more are let go, since each is one that the camera can't fill. Chosen: reading takes about 1 ms. */
const MOST_OPEN = 2;

interface Kept {
  readonly tMs: Ms;
  readonly luma: Promise<Luma | null>;
}

/** @param read takes the brightness of a picture; `readLuma` unless a test has its own */
export function betweenFrames(read: typeof readLuma = readLuma): BetweenFrames {
  let kept: readonly Kept[] = [];
  let open = 0;
  let dropped = 0;

  const lumaOf = async ({ image, turn }: Frame): Promise<Luma | null> => {
    open += 1;
    try {
      return await read(image, turn);
    } catch {
      // A picture that can't be read is one picture less; one that is looked at whole will tell what is wrong.
      dropped += 1;
      return null;
    } finally {
      image.close();
      open -= 1;
    }
  };
  return {
    add(frame) {
      if (open >= MOST_OPEN) {
        frame.image.close();
        dropped += 1;
        return;
      }
      const all = [...kept, { tMs: frame.tMs, luma: lumaOf(frame) }];
      kept = thinned(all, MOST_BETWEEN);
      dropped += all.length - kept.length;
    },
    async take() {
      const taken = kept;
      kept = [];
      const lumas = await Promise.all(taken.map(({ luma }) => luma));
      return taken.flatMap(({ tMs }, i) => {
        const luma = lumas[i];
        return luma ? [{ tMs, luma }] : [];
      });
    },
    dropped: () => dropped,
  };
}

/** The same list or, when it has more than `most`, without the one whose neighbours lie closest together; first and last stay. */
function thinned<T extends { readonly tMs: Ms }>(list: readonly T[], most: number): readonly T[] {
  if (list.length <= most) return list;
  const time = (i: number): number => (list[i] as T).tMs;
  let crowded = 1;
  for (let i = 2; i < list.length - 1; i += 1) {
    if (time(i + 1) - time(i - 1) < time(crowded + 1) - time(crowded - 1)) crowded = i;
  }
  return list.filter((_, i) => i !== crowded);
}
