import { median, quantile } from '../signal/median.ts';
import type { RepRule } from './rep-rule.ts';

/** Ranges of at least this share of a high quantile make the person's usual range: the bulk of full movements, not the half-hearted ones. Chosen. */
const BULK_SHARE = 0.6;
const HIGH_QUANTILE = 0.8;
/** The border between complete and partial may lie this far from `completeShare` where the ranges themselves leave a gap there. Chosen. */
const SLACK = 0.15;
/** A gap counts as far as this beyond that border, same share. Chosen: half-hearted movements just below it stand apart from the full ones above. */
const BEYOND = 0.075;

/** The person's usual range in this set, same unit as `ranges`; null for none. */
export function usualRange(ranges: readonly number[]): number | null {
  const high = quantile(ranges, HIGH_QUANTILE);
  return high === null ? null : median(ranges.filter((r) => r >= BULK_SHARE * high));
}

/**
 * From which range on a movement of this set is complete: about `completeShare` of the usual range, in the middle of the widest gap between the
 * ranges that reaches there, and never below `leastDeg`.
 */
export function completeThreshold(ranges: readonly number[], rule: Pick<RepRule, 'completeShare' | 'leastDeg'>): number {
  const usual = usualRange(ranges);
  if (usual === null) return rule.leastDeg;
  const from = (rule.completeShare - SLACK) * usual;
  const to = (rule.completeShare + SLACK) * usual;
  let border = rule.completeShare * usual;
  let widest = 0;
  let low = from;
  for (const range of [...ranges].sort((a, b) => a - b)) {
    const high = Math.min(range, to + BEYOND * usual);
    if (low < to && high - low > widest) {
      widest = high - low;
      border = Math.min(to, (low + high) / 2);
    }
    low = Math.max(low, range);
  }
  return Math.max(rule.leastDeg, border);
}
