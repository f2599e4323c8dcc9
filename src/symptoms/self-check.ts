import type { Side } from '../pose/landmarks.ts';
import type { Entry, NotAnswered } from './entry.ts';

/**
 * Checks of strength that somebody does alone, one leg after the other, weekly: what the person tells about the leg, hence beside the symptoms and not
 * the dose. They look at the muscles of L4 and L5: big toe, lifting the forefoot (several textbook pages, second-hand).
 */
export const SELF_CHECK_IDS = ['big-toe', 'heel-walk', 'heel-stand', 'foot-slap', 'forefoot-sinks'] as const;
export type SelfCheckId = (typeof SELF_CHECK_IDS)[number];

/** Big toe against a finger, from weak to strong: it cannot be lifted, it is easily pushed down, it is as strong as the other one. */
export const BIG_TOE = ['cannot-lift', 'easily-pushed-down', 'as-strong'] as const;

/** Steps of the walk on the heels. About ten are asked for: a textbook excerpt, second-hand. */
export const HEEL_WALK_STEPS = 10;

/** What was found on one leg. */
export type SelfCheckFinding =
  | { readonly check: 'big-toe'; readonly found: (typeof BIG_TOE)[number] | NotAnswered }
  /** Steps before the forefoot came down: whole, 0 to `HEEL_WALK_STEPS`. */
  | { readonly check: 'heel-walk'; readonly found: number | NotAnswered }
  /** Seconds the forefoot stayed up. */
  | { readonly check: 'heel-stand'; readonly found: number | NotAnswered }
  /** Whether it slaps, or sinks, when walking. */
  | { readonly check: 'foot-slap' | 'forefoot-sinks'; readonly found: 'yes' | 'no' | NotAnswered };

export interface SelfCheck extends Entry {
  readonly kind: 'self-check';
  readonly findings: readonly (SelfCheckFinding & { readonly side: Side })[];
}
