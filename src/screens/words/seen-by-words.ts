import type { SeenBy } from '../../exercises/exercise.ts';

/** Texts of the two ways in which a foot is measured: by the camera alone, or through three stickers. */
export interface SeenByWords {
  /** Of one set, after its day. */
  readonly way: Record<SeenBy, string>;
  /** Beside the choice before a prescribed set. */
  readonly asked: Record<SeenBy, string>;
  /** In a plan, on its sheet and in a report. */
  readonly told: string;
  /** In a report, of foot taps. */
  readonly footTapMethod: string;
  /** In a table of sets. */
  readonly column: string;
  /** Two sets that are compared were measured in two ways. */
  readonly twoWays: string;
  /** Below two sides that are compared. */
  readonly healthyToes: string;
  /** Of sets over days: the newest way alone is compared. */
  readonly mixed: Record<SeenBy, string>;
}
