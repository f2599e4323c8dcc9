import type { AnyExerciseId } from '../exercises/exercise.ts';
import type { ExerciseDefinition } from '../exercises/exercise-definition.ts';
import type { MeasuredRep, SetResult } from '../measure/set-result.ts';
import type { Side } from '../pose/landmarks.ts';
import type { PoseModel } from '../pose/model.ts';
import type { PersonId } from './person.ts';
import type { RepEdit } from './rep-edit.ts';

/** What a set was measured from. */
export type SetSource = 'camera' | 'file' | 'example' | 'recording' | 'window';

/** What is known of a set when it starts. Never changed afterwards. */
export interface SetHeader {
  /** UUID, see `new-id.ts`. */
  readonly id: string;
  readonly schema: 2;
  /** When counting began: ISO 8601, UTC, with milliseconds, as `Date.toISOString` writes it. */
  readonly startedAt: string;
  readonly exercise: AnyExerciseId;
  /** The therapist's own exercise, whole, when `exercise` is `own`. */
  readonly definition?: ExerciseDefinition;
  readonly side: Side;
  /** The dose: how many complete repetitions it was to be. Null: open-ended, or stored before the dose was (schema 1). */
  readonly targetReps: number | null;
  readonly person: PersonId;
  readonly source: SetSource;
  readonly fileName?: string;
  /** The pose model; `stickers`: none, the set was seen through stickers. */
  readonly model: PoseModel | 'stickers';
}

/** `interrupted`: the page closed, or the source broke off, before the set was over. */
export type SetRunState = 'running' | 'finished' | 'interrupted';

/** A set as it stands in the store, whole. */
export interface StoredSet extends SetHeader {
  readonly state: SetRunState;
  /** As measured: the result's repetitions, or those counted live when there is no result. Edits are kept apart. */
  readonly reps: readonly MeasuredRep[];
  /** Null while it runs, and for a set whose page closed. */
  readonly result: SetResult | null;
  /** In the order in which they hold: by moment and id (`written-after.ts`). `editedReps` applies them. */
  readonly edits: readonly RepEdit[];
}
