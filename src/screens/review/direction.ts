import type { Verdict } from '../../compare/range-difference.ts';
import type { Direction } from '../words/review-words.ts';

/** Where a change goes, when it is beyond the error. */
export function directionOf(change: number, verdict: Verdict): Direction {
  if (verdict === 'within-error') return 'unsure';
  return change > 0 ? 'more' : 'less';
}

/** The same as a sign, for the eye alone. */
export const SIGNS: Readonly<Record<Direction, string>> = { more: '▲', less: '▼', unsure: '=' };
