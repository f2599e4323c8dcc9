import { exerciseOf } from '../../exercises/catalogue.ts';
import type { ExerciseId } from '../../exercises/exercise.ts';
import { markedAngle } from '../../measure/marked-angle.ts';
import type { SetResult } from '../../measure/set-result.ts';
import type { Side } from '../../pose/landmarks.ts';
import type { Deg, Ms } from '../../units.ts';

/** What an angle was marked for. */
export const MARK_KINDS = ['symptom', 'limit'] as const;
export type MarkKind = (typeof MARK_KINDS)[number];

/** A mark while the movement is seen: its angle as it is known live. */
export interface LiveMark {
  readonly kind: MarkKind;
  readonly tMs: Ms;
  readonly fromRestDeg: Deg;
}

/** A mark as it was measured once the movement was over. */
export interface Mark {
  readonly kind: MarkKind;
  readonly exercise: ExerciseId;
  readonly side: Side;
  /** From rest; null: the joint was not measured about then. */
  readonly fromRestDeg: Deg | null;
}

/** The marks of one recording, from its smoothed curve. */
export function measuredMarks(
  marks: readonly LiveMark[],
  exercise: ExerciseId,
  { side, curve }: Pick<SetResult, 'side' | 'curve'>,
): readonly Mark[] {
  const sign = exerciseOf(exercise).rule.direction === 'rises' ? 1 : -1;
  return marks.map(({ kind, tMs }) => ({
    kind,
    exercise,
    side,
    fromRestDeg: markedAngle(curve, tMs, sign)?.fromRestDeg ?? null,
  }));
}

/** The values of one kind and leg, in the order in which they were marked. */
export const valuesOf = (marks: readonly Mark[], exercise: ExerciseId, kind: MarkKind, side: Side): readonly Deg[] =>
  marks.flatMap((mark) =>
    mark.exercise === exercise && mark.kind === kind && mark.side === side && mark.fromRestDeg !== null ? [mark.fromRestDeg] : [],
  );
