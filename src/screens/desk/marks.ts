import { followedError } from '../../compare/mark-error.ts';
import { exerciseOf } from '../../exercises/catalogue.ts';
import type { ExerciseId } from '../../exercises/exercise.ts';
import { markedAngle } from '../../measure/marked-angle.ts';
import type { SetResult } from '../../measure/set-result.ts';
import type { Side } from '../../pose/landmarks.ts';
import type { AngleMark, AngleMarkFor, MarkMethod, MarkSource, MarkZero } from '../../symptoms/angle-mark.ts';
import type { Deg, Ms } from '../../units.ts';

/** What is noted with a mark. */
export type MarkNotes = Pick<AngleMark, 'foot' | 'place'>;

/** An angle as it is shown now, and as a mark takes it. */
export interface Reading {
  readonly angleDeg: Deg;
  readonly zero: MarkZero;
  /** Half the width of the 95 % interval. */
  readonly errorDeg: Deg;
  readonly method: MarkMethod;
}

/** A marked angle at the desk. */
export interface Mark {
  readonly id: string;
  readonly kind: AngleMarkFor;
  readonly exercise: ExerciseId;
  readonly side: Side;
  readonly from: MarkSource;
  readonly notes: MarkNotes;
  /** Null: the joint was not measured then. */
  readonly reading: Reading | null;
}

/** A mark in a movement that is still followed: its angle is measured once the movement is over. */
export interface WaitingMark extends Omit<Mark, 'reading'> {
  readonly tMs: Ms;
  /** The angle as it is known live. */
  readonly liveDeg: Deg;
}

/** 1 when the exercise's angle rises, -1 when it falls. */
export const signOf = (exercise: ExerciseId): 1 | -1 => (exerciseOf(exercise).rule.direction === 'rises' ? 1 : -1);

/** The angle at a moment of a followed movement, from rest; null when it was not measured then. */
export function followedReading(
  exercise: ExerciseId,
  { curve, reps }: Pick<SetResult, 'curve' | 'reps'>,
  atMs: Ms,
): Reading | null {
  const marked = markedAngle(curve, atMs, signOf(exercise));
  if (!marked) return null;
  return { angleDeg: marked.fromRestDeg, zero: 'rest', errorDeg: followedError(exercise, reps, atMs), method: 'followed' };
}

/** The marks of one recording, those that waited from its smoothed curve. @param result null: nothing was measured */
export const measuredMarks = (
  marks: readonly (WaitingMark | Mark)[],
  result: Pick<SetResult, 'curve' | 'reps'> | null,
): readonly Mark[] =>
  marks.map((mark) => {
    if (!('tMs' in mark)) return mark;
    const { tMs, liveDeg: _, ...rest } = mark;
    return { ...rest, reading: result && followedReading(mark.exercise, result, tMs) };
  });

/** A mark that has its angle. */
export type ReadMark = Mark & { readonly reading: Reading };

/** Marks that may be set beside each other: one leg, one kind, one zero. */
export interface MarkGroup {
  readonly side: Side;
  readonly kind: AngleMarkFor;
  readonly zero: MarkZero;
}

/** The marks of a group in the order in which they were made. */
export const marksOf = (marks: readonly Mark[], exercise: ExerciseId, { side, kind, zero }: MarkGroup): readonly ReadMark[] =>
  marks.filter(
    (mark): mark is ReadMark =>
      mark.exercise === exercise && mark.side === side && mark.kind === kind && mark.reading?.zero === zero,
  );

/** Which time this is in its group, from 1. */
export const trialOf = (marks: readonly Mark[], { id, exercise, side, kind, reading: { zero } }: ReadMark): number =>
  marksOf(marks, exercise, { side, kind, zero }).findIndex((each) => each.id === id) + 1;
