import type { Verdict } from '../../compare/range-difference.ts';
import type { ComparisonError } from '../../compare/set-against-set.ts';

/** Texts about differences: between two sets, and within one. */
export interface CompareWords {
  readonly with: string;
  readonly otherLeg: (when: string) => string;
  readonly sameLeg: (when: string) => string;
  readonly nothing: string;
  /** @param leg null when two legs are compared */
  readonly title: (exercises: string, leg: string | null) => string;
  /** @param name of the set that went further */
  readonly more: (name: string, deg: string) => string;
  readonly alike: string;
  readonly verdict: Record<Verdict, (limitDeg: string) => string>;
  readonly what: string;
  readonly difference: string;
  readonly range: string;
  readonly count: string;
  readonly hold: string;
  readonly up: string;
  readonly noPercent: string;
  readonly signLegs: string;
  readonly signTimes: string;
  readonly dots: string;
  readonly dotsCaption: string;
  readonly error: string;
  readonly healthy: string;
  readonly cannot: Record<ComparisonError['kind'] | 'own-exercise', string>;
  /** A set of foot taps by itself. */
  readonly within: {
    readonly title: string;
    readonly tempo: string;
    readonly tempoValue: (perMinute: number) => string;
    readonly even: (percent: number) => string;
    readonly hold: string;
    readonly holdValue: (seconds: string) => string;
    readonly holdHint: string;
    readonly tiring: string;
    readonly tiringChange: (signedDeg: string) => string;
    readonly tiringHint: Record<Verdict, (limitDeg: string) => string>;
    readonly slower: Record<Verdict, (signedPerMinute: string) => string>;
    readonly tooFew: (needed: number) => string;
    readonly none: string;
  };
}
