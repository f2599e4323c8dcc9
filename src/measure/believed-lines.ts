import type { SegmentLine } from '../angles/joint-angle.ts';
import { unwrappedNear } from '../units.ts';

/**
 * A segment seen shorter or longer than its usual length by these shares is not where its points are: the model has taken hold of the other leg, a chair,
 * nothing. Chosen: a leg that turns to the camera by 30 degrees loses 13 %, perspective adds as much, the model's own jitter stays under 15 %.
 */
export const SHORTEST = 0.6;
export const LONGEST = 1.6;
/**
 * No limb turns by more than this much and this quickly: points that do have jumped, to the other leg as a rule. Chosen: a ball is kicked with 600 to 900
 * degrees a second at the knee (from memory), an exercise is done with a third of that.
 */
const JUMP_DEG = 20;
const JUMP_DEG_PER_MS = 0.5;
/** Points that have jumped are not believed until they are back where they were, or for this long. Chosen: a raise there and back takes longer. */
const ASTRAY_MS = 1500;

/** Directions of a line whose points move as a body's do; null where they do not, or were not seen. @param tMs,lines one a frame */
export function believedDirections(
  tMs: readonly number[],
  lines: readonly (SegmentLine | null)[],
  usualPx: number,
): readonly (number | null)[] {
  let last: { readonly tMs: number; readonly deg: number } | null = null;
  let astray: { readonly sinceMs: number; readonly fromDeg: number } | null = null;
  return lines.map((line, i) => {
    if (!line) return null;
    const { directionDeg, lengthPx } = line;
    if (lengthPx < SHORTEST * usualPx || lengthPx > LONGEST * usualPx) return null;
    const now = tMs[i] as number;
    const turnedFrom = (deg: number) => Math.abs(unwrappedNear(directionDeg, deg) - deg);
    if (astray !== null) {
      if (turnedFrom(astray.fromDeg) <= JUMP_DEG || now - astray.sinceMs > ASTRAY_MS) astray = null;
    } else if (last !== null && turnedFrom(last.deg) > JUMP_DEG + JUMP_DEG_PER_MS * (now - last.tMs)) {
      astray = { sinceMs: now, fromDeg: last.deg };
    }
    last = { tMs: now, deg: directionDeg };
    return astray === null ? directionDeg : null;
  });
}
