import { noiseLevel } from '../signal/noise-level.ts';
import { type Deg, deg, type Ms } from '../units.ts';

/** The noise is that of this many latest frames. Chosen: three seconds of a usual camera. */
const REMEMBERED = 90;
/** Fewer frames tell no noise. */
const LEAST = 12;
/** A movement must rise by this many standard deviations of the noise that is left: over a minute at rest its highest and lowest are about seven apart. Chosen. */
const SIGMAS = 7;
/** Never more frames, nor older ones, are averaged: a quick lift is out of rest for 150 ms. Chosen. */
const MOST_AVERAGED = 5;
const AVERAGED_MS = 170;

interface Moment {
  readonly tMs: Ms;
  readonly deg: number;
}

/** The latest angles as they were measured, oldest first; null where not. */
export type LatestAngles = readonly (Moment | null)[];

/** The angle to count by. */
export interface Steadied {
  readonly latest: LatestAngles;
  readonly deg: Deg | null;
  /** From what on a movement is noticed. */
  readonly noticeDeg: Deg;
}

/**
 * An angle without a filter of its own, made fit for live counting: where its noise alone could be a movement it is the mean of the latest frames, as few as needed, and
 * what noise is left decides from what on a movement is noticed. An angle with little noise stays as it is.
 * @param noticeDeg the least that is noticed without noise
 */
export function steadied(before: LatestAngles, tMs: Ms, angle: Deg | null, noticeDeg: Deg): Steadied {
  const latest = [...before.slice(1 - REMEMBERED), angle === null ? null : { tMs, deg: angle }];
  if (angle === null) return { latest, deg: null, noticeDeg };
  const noise = latest.length < LEAST ? 0 : noiseLevel(latest.map((moment) => moment?.deg ?? null));
  const wanted = Math.min(MOST_AVERAGED, Math.max(1, Math.ceil(((SIGMAS * noise) / noticeDeg) ** 2)));
  const since = latest.slice(-wanted);
  const gap = since.findLastIndex((moment) => moment === null || tMs - moment.tMs > AVERAGED_MS);
  const averaged = since.slice(gap + 1).flatMap((moment) => (moment ? [moment.deg] : []));
  return {
    latest,
    deg: deg(averaged.reduce((sum, each) => sum + each, 0) / averaged.length),
    noticeDeg: deg(Math.max(noticeDeg, (SIGMAS * noise) / Math.sqrt(averaged.length))),
  };
}
