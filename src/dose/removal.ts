import type { AnyExerciseId } from '../exercises/exercise.ts';
import type { Side } from '../pose/landmarks.ts';
import type { Entry } from '../symptoms/entry.ts';

/**
 * Says that a set was taken back by hand. It stays when the set is gone, and travels like any other entry: whichever copy of the set comes after it, from a file
 * or a server, is not taken in again. It was told when the set was removed (`at`).
 */
export interface Removal extends Entry {
  readonly kind: 'removal';
  /** The id of the set. */
  readonly recordId: string;
  readonly of: 'set' | 'hand-set';
  /** What the set was; null when it could not be read any more. No angle and no count stays. */
  readonly what: {
    readonly exercise: AnyExerciseId;
    readonly side: Side;
    /** When it began, of one counted by hand when it was told: ISO 8601, UTC. */
    readonly doneAt: string;
  } | null;
}

/** The ids of what was taken back. */
export const removedIds = (entries: readonly { readonly kind: string }[]): ReadonlySet<string> =>
  new Set(entries.filter((entry): entry is Removal => entry.kind === 'removal').map(({ recordId }) => recordId));
