import type { Clock } from '../../dose/local-time.ts';
import type { Rested } from '../../dose/rest.ts';
import { type Ms, ms } from '../../units.ts';
import { clockNow } from '../parts/clock-now.ts';

/** The moment at which a day is looked at. */
export interface Look {
  readonly clock: Clock;
  /** The same moment on a clock that nobody sets, ms since the page was opened. It may stand while the machine sleeps. */
  readonly steadyMs: Ms;
  /** How long ago sets ended, counted on that clock from when this page first heard of them. */
  readonly rested: Rested;
}

interface Heard {
  readonly ageMs: number;
  readonly atMs: Ms;
}

/** By id, what this page knows of sets: it stays while the page is open, whatever screen is shown. */
const heard = new Map<string, Heard>();

export function lookNow(): Look {
  const clock = clockNow();
  const steadyMs = ms(performance.now());
  const rested: Rested = ({ id, endedAt }) => {
    const first = heard.get(id) ?? { ageMs: Math.max(0, clock.nowMs - Date.parse(endedAt)), atMs: steadyMs };
    heard.set(id, first);
    return first.ageMs + steadyMs - first.atMs;
  };
  return { clock, steadyMs, rested };
}

/** How long it still is, ms, from now to a moment on the wall clock of a look; a clock that was set back meanwhile makes it no longer. */
export const leftMs = (untilMs: number, { clock, steadyMs }: Look): number =>
  Math.min(untilMs - Date.now(), untilMs - clock.nowMs - (performance.now() - steadyMs));
