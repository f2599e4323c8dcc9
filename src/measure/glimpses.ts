import type { RepRule } from '../reps/rep-rule.ts';
import { holeLimit } from '../signal/hole-limit.ts';
import type { AngleInFrame } from './angle-series.ts';
import { firstAtLeast } from './first-at-least.ts';

/**
 * Takes out what only the points tell for a moment between frames that the picture's motion tells: the points of a foot in the air jump, and shrink its
 * movement, while a hole that short is bridged. Where they are all there is for longer, they stay.
 * @param tMs one a frame
 */
export function withoutGlimpses(
  frames: readonly (AngleInFrame | null)[],
  tMs: readonly number[],
  { leastMs }: Pick<RepRule, 'leastMs'>,
): readonly (AngleInFrame | null)[] {
  const bridgeMs = holeLimit(tMs, leastMs);
  const followed = tMs.filter((_, i) => frames[i]?.source === 'flow');
  return frames.map((frame, i) => {
    if (frame === null || frame.source === 'flow') return frame;
    const next = firstAtLeast(followed, tMs[i] as number, (t) => t);
    const before = followed[next - 1];
    const after = followed[next];
    return before !== undefined && after !== undefined && after - before <= bridgeMs ? null : frame;
  });
}
