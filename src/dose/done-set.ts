import type { SeenBy } from '../exercises/exercise.ts';
import type { GlideResult } from '../measure/set-result.ts';
import type { Side } from '../pose/landmarks.ts';
import type { CalendarDay } from '../symptoms/calendar-day.ts';
import type { Entry } from '../symptoms/entry.ts';
import type { Deg } from '../units.ts';
import type { PrescribedExercise, PrescribedExerciseId } from './prescribed-exercise.ts';

/** A set that was done, measured or counted by hand. */
export interface DoneSet {
  readonly id: string;
  readonly exercise: PrescribedExerciseId;
  readonly side: Side;
  /** The line of a prescription that it was done for; null when nobody said: then the exercise and the leg tell. */
  readonly itemId: string | null;
  /** On the person's own calendar. */
  readonly day: CalendarDay;
  /** When it ended, ISO 8601, UTC. */
  readonly endedAt: string;
  /** Complete repetitions. */
  readonly reps: number;
  /** How far each of them went that was measured; none for a set counted by hand. */
  readonly rangesDeg: readonly Deg[];
  /** How it was measured; left out: by the pose model, or not at all. */
  readonly seenBy?: SeenBy;
  /** Of measured nerve glides, what foot and head did together; else null. */
  readonly glide: GlideResult | null;
}

/** A set without the camera: counted by hand, or by the beat of a metronome. It was told when it ended (`at`). */
export interface HandSet extends Entry {
  readonly kind: 'hand-set';
  readonly exercise: PrescribedExerciseId;
  readonly side: Side;
  readonly itemId: string | null;
  readonly reps: number;
  readonly counted: 'by-hand' | 'by-metronome';
}

/** Says for which line of which prescription a measured set was done. */
export interface SetLink extends Entry {
  readonly kind: 'set-link';
  readonly setId: string;
  readonly prescriptionId: string;
  readonly itemId: string;
}

export const doneByHand = ({ id, exercise, side, itemId, day, at, reps }: HandSet): DoneSet => ({
  id,
  exercise,
  side,
  itemId,
  day,
  endedAt: at,
  reps,
  rangesDeg: [],
  glide: null,
});

/** Whether a set was begun for this line. */
export const wasBegunFor = (item: PrescribedExercise, set: DoneSet): boolean =>
  item.sides.includes(set.side) && (set.itemId === null ? set.exercise === item.exercise : set.itemId === item.id);

/** Whether a set belongs to this line. One without a single repetition is none. */
export const isOf = (item: PrescribedExercise, set: DoneSet): boolean => set.reps > 0 && wasBegunFor(item, set);
