import { type Ms, ms } from '../units.ts';
import type { AngleSample } from './movement.ts';

/** Higher than this share of its highest a forefoot has not sunk. Chosen: a third of the way down is seen with the eye. */
const SUNK_SHARE = 2 / 3;
/** What happens in this time before it comes down is putting it down, not sinking, ms. Chosen: people lower a foot in half a second or less. */
const LOWERING_MS = 700;

/** How long something was held up, and whether it sank. */
export interface StandTime {
  /** From leaving the floor to coming down. */
  readonly upMs: Ms;
  /** After how long it had sunk by a third for good while still up; null: it did not. */
  readonly sankAfterMs: Ms | null;
}

/**
 * Of one movement, from its samples in order of time, positive upwards.
 * @param restDeg the angle on the floor
 * @param upDeg it is up while higher than this above it
 * @returns null when it never was
 */
export function standTime(samples: readonly AngleSample[], restDeg: number, upDeg: number): StandTime | null {
  const heights = samples.flatMap(({ tMs, deg }) => (deg === null ? [] : [{ tMs, height: deg - restDeg }]));
  const up = heights.filter(({ height }) => height > upDeg);
  const first = up[0];
  const last = up[up.length - 1];
  if (!first || !last) return null;
  const highest = up.reduce((most, { height }) => Math.max(most, height), 0);
  const kept = up.findLast(({ height }) => height >= SUNK_SHARE * highest);
  const sank = kept !== undefined && last.tMs - kept.tMs > LOWERING_MS;
  return { upMs: ms(last.tMs - first.tMs), sankAfterMs: sank ? ms(kept.tMs - first.tMs) : null };
}
