import type { LegHeld } from '../../measure/set-result.ts';

/** Whether the leg rose above its limit: `over` and `under` only where the error leaves no doubt. */
export function againstLimit({ highestDeg, uncertaintyDeg, limitDeg }: LegHeld): 'under' | 'perhaps-over' | 'over' {
  if (highestDeg - uncertaintyDeg > limitDeg) return 'over';
  return highestDeg > limitDeg ? 'perhaps-over' : 'under';
}
