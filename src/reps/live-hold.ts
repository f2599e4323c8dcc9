import { type Ms, ms } from '../units.ts';
import type { CounterState } from './live-counter.ts';

/** Held: not fallen back by more than this share of the rise. Chosen: a hold that tires sinks a little, as in `stand-time.ts`. */
const SUNK_SHARE = 1 / 3;

/**
 * For how long the movement under way has been held near its top, as known live: a later, higher top begins anew.
 * @returns null while nothing is lifted, or it is on its way down
 */
export function liveHold({ phase, lowDeg, highDeg, nowDeg, holdFromMs, lastMs }: CounterState): Ms | null {
  if (phase !== 'high' || highDeg - nowDeg > SUNK_SHARE * (highDeg - lowDeg)) return null;
  return ms(lastMs - holdFromMs);
}
