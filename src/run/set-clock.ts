import type { FrameTaken } from '../capture/between-frames.ts';
import { type Ms, ms } from '../units.ts';

/**
 * How long a break stands in a set's own time, whatever it lasted: long enough to part what was before from what comes after (`LIVE_GAP_MS`, `holeLimit`), too
 * short for anybody to count as gone (`LEFT_MS`). Chosen.
 */
export const BREAK_MS = 2500;
/** The wall clock is ahead of the pictures' by this much more than before: the machine has slept, and the pictures' clock with it. Chosen: no picture takes that long. */
const ASLEEP_MS = 3000;

/** The time of a set: it goes on over breaks, each of which takes `BREAK_MS` of it. */
export interface SetClock {
  /** The same frame in the set's time. Times of one opening in order. @returns also whether a break came before it */
  readonly read: (frame: FrameTaken) => { readonly frame: FrameTaken; readonly afterBreak: boolean };
  /** What comes next is from a source that was opened anew: its own clock begins anywhere. */
  readonly reopened: () => void;
}

/** @param wallMs a clock that goes on while the machine sleeps */
export function setClock(wallMs: () => number): SetClock {
  let sourceMs: number | null = null;
  let outMs = 0;
  let seenAtMs = 0;
  let broken = false;
  return {
    reopened() {
      sourceMs = null;
      broken = true;
    },
    read({ between = [], ...frame }) {
      const nowMs = wallMs();
      const stepMs = sourceMs === null ? 0 : frame.tMs - sourceMs;
      const asleep = sourceMs !== null && nowMs - seenAtMs - stepMs > ASLEEP_MS;
      const parts = broken || asleep || stepMs > BREAK_MS;
      const begins = sourceMs === null && !parts;
      outMs = begins ? frame.tMs : outMs + (parts ? BREAK_MS : stepMs);
      seenAtMs = nowMs;
      broken = false;
      sourceMs = frame.tMs;
      const to = (tMs: Ms): Ms => ms(outMs - (frame.tMs - tMs));
      // On which side of a break the pictures between were is not known of those before, and those after begin nothing that counts.
      const kept = parts ? [] : between.map((each) => ({ ...each, tMs: to(each.tMs) }));
      return { frame: { ...frame, tMs: ms(outMs), between: kept }, afterBreak: parts };
    },
  };
}
