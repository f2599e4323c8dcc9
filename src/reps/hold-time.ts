import { type Ms, ms } from '../units.ts';

/** Within this share of the range from the peak, the joint is near the top. Chosen. */
export const NEAR_TOP = 0.1;

/** A limb starts and stops softly, as half a cosine wave. This far along it, radians before or after the top, is a share `fallen` of its range left. */
const phaseAt = (fallen: number): number => Math.acos(1 - 2 * fallen);

/** The last tenth before the top as a share of the time from there down to `fallen`. */
const turningShare = (fallen: number): number => phaseAt(NEAR_TOP) / (phaseAt(fallen) - phaseAt(NEAR_TOP));

/**
 * How long a joint was held: the time near the top, less what a movement takes to come to rest there and to leave again. Without that a tap that is
 * not held at all seems held for a fifth of its time.
 * @param nearMs time within NEAR_TOP of the peak
 * @param waysMs time outside of it: up from where a share `fallen` of the range was left, and down to there again
 */
export const holdTime = (nearMs: number, waysMs: number, fallen: number): Ms =>
  ms(Math.max(0, nearMs - turningShare(fallen) * Math.max(0, waysMs)));
