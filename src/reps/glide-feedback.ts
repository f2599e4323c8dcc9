import type { Ms } from '../units.ts';
import type { GlideCycle, UnclearReason } from './glide-coordination.ts';

/** What is worth a word to the person. `between` is not: nothing plain can be said of it. */
type Fault = 'wrong' | Exclude<UnclearReason, 'between'>;

/** What was said of glides, and when. */
export interface GlideFeedback {
  /** The fault of the latest cycles, and for how many in a row. */
  readonly fault: Fault | null;
  readonly inRow: number;
  /** When the wrong way round was last told, and whether it has been right since. */
  readonly wrong: Told;
  /** The same of cycles that could not be judged. */
  readonly trouble: Told;
}

interface Told {
  /** Null: never. */
  readonly lastMs: Ms | null;
  readonly rightSince: boolean;
}

/** Chosen: one cycle may be a slip. */
const IN_A_ROW = 2;
/** Nothing is told twice within this, ms. Chosen: about ten glides. */
const QUIET_MS = 30_000;

const NEVER: Told = { lastMs: null, rightSince: true };
export const NO_FEEDBACK: GlideFeedback = { fault: null, inRow: 0, wrong: NEVER, trouble: NEVER };

const faultOf = ({ pattern, reason }: GlideCycle): Fault | null => {
  if (pattern === 'tension') return 'wrong';
  return reason === 'between' ? null : reason;
};

const mayTell = ({ lastMs, rightSince }: Told, tMs: Ms): boolean => rightSince && (lastMs === null || tMs - lastMs >= QUIET_MS);

/**
 * Takes the next cycle. Two wrong ones in a row are told, and two in a row that could not be judged for the same reason; neither again before a clear slide,
 * nor within half a minute. A clear slide, or a cycle that is between the two, ends a row.
 * @returns the state, and what is to be told now; null: nothing
 */
export function heedCycle(before: GlideFeedback, cycle: GlideCycle, tMs: Ms): readonly [GlideFeedback, Fault | null] {
  if (cycle.pattern === 'slide') {
    const right = (told: Told): Told => ({ ...told, rightSince: true });
    return [{ fault: null, inRow: 0, wrong: right(before.wrong), trouble: right(before.trouble) }, null];
  }
  const fault = faultOf(cycle);
  const inRow = fault === null ? 0 : fault === before.fault ? before.inRow + 1 : 1;
  const next = { ...before, fault, inRow };
  const which = fault === 'wrong' ? 'wrong' : 'trouble';
  if (fault === null || inRow < IN_A_ROW || !mayTell(before[which], tMs)) return [next, null];
  return [{ ...next, [which]: { lastMs: tMs, rightSince: false } }, fault];
}
