/** Why the count of a set is not the one that was shown while it ran. `n` of the `shown` repetitions, from 1. */
export interface RecountWords {
  /** Over the reasons. */
  readonly title: (shown: number, now: number) => string;
  readonly small: (n: number) => string;
  readonly gap: (n: number) => string;
  readonly unfinished: (n: number) => string;
  /** Not seen well enough, or not found again. */
  readonly unsure: (n: number) => string;
  /** Counted only after the set. */
  readonly more: (n: number) => string;
}
