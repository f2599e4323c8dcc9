import type { Ms } from '../../units.ts';

/** Over how long the rate is taken, ms. Chosen: a stall of a second is none of the machine's. */
const OVER_MS = 5000;
/** Under so many a second it is said that quick movements are missed, and from so many on no more. Measured: movements at the usual pace are counted right at 8. */
const FEW = 7;
const ENOUGH = 9;

/** How many pictures were looked at lately. */
export interface PictureRate {
  readonly timesMs: readonly Ms[];
  readonly few: boolean;
}

export const NO_RATE: PictureRate = { timesMs: [], few: false };

/** Takes note of a picture that was looked at. @param nowMs later each time */
export function seePicture({ timesMs, few }: PictureRate, nowMs: Ms): PictureRate {
  const all = [...timesMs, nowMs];
  const first = all[0] as Ms;
  if (nowMs - first < OVER_MS) return { timesMs: all, few };
  const aSecond = ((all.length - 1) * 1000) / (nowMs - first);
  return { timesMs: all.filter((t) => nowMs - t < OVER_MS), few: aSecond < (few ? ENOUGH : FEW) };
}
