import { type GlideCount, glideCount } from '../../dose/glide-sets.ts';
import type { GlideResult } from '../../measure/set-result.ts';
import type { UnclearReason } from '../../reps/glide-coordination.ts';

/**
 * What a set of glides was, as its patient is told: `right-way`: so many of all slid; `wrong-way`: none did, or the set as a whole was tension;
 * `cannot-tell`: no cycle was clear; `no-cycle`: there was none.
 */
export interface GlideVerdict extends GlideCount {
  readonly kind: 'right-way' | 'wrong-way' | 'cannot-tell' | 'no-cycle';
  /** Why cycles were unclear, each once, the most frequent first. */
  readonly reasons: readonly UnclearReason[];
}

export function glideVerdict(glide: Pick<GlideResult, 'pattern' | 'cycles'>): GlideVerdict {
  const count = glideCount([glide]);
  return { ...count, kind: kindOf(glide.pattern, count), reasons: reasonsOf(glide) };
}

function kindOf(pattern: GlideResult['pattern'], { cycles, slide, tension }: GlideCount): GlideVerdict['kind'] {
  if (cycles === 0) return 'no-cycle';
  if (slide + tension === 0) return 'cannot-tell';
  return slide === 0 || pattern === 'tension' ? 'wrong-way' : 'right-way';
}

function reasonsOf({ cycles }: Pick<GlideResult, 'cycles'>): readonly UnclearReason[] {
  const times = new Map<UnclearReason, number>();
  for (const { reason } of cycles) if (reason) times.set(reason, (times.get(reason) ?? 0) + 1);
  return [...times].toSorted(([, a], [, b]) => b - a).map(([reason]) => reason);
}
