import { quantile } from '../signal/median.ts';
import { type Deg, deg } from '../units.ts';

/** This share of the angles lies at or below the rest: people rest between repetitions for longer than that. Chosen. */
const RESTING_SHARE = 0.1;

/** The angle at which the joint of a set rested; null when nothing was measured. @param sign 1 when the exercise's angle rises, -1 when it falls */
export function restLevel(angleDeg: readonly (Deg | null)[], sign: 1 | -1): Deg | null {
  const turned = angleDeg.flatMap((angle) => (angle === null ? [] : [sign * angle]));
  const rest = quantile(turned, RESTING_SHARE);
  return rest === null ? null : deg(sign * rest);
}
