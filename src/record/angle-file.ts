import type { JointAngle } from '../angles/joint-angle.ts';
import { exerciseOf } from '../exercises/catalogue.ts';
import type { AnyExerciseId } from '../exercises/exercise.ts';
import type { ExerciseDefinition } from '../exercises/exercise-definition.ts';
import type { SetResult } from '../measure/set-result.ts';
import type { Side } from '../pose/landmarks.ts';
import { csvOf, degCell, msCell } from './csv.ts';

/** The angle through one set, frame by frame, see docs/angle-series.schema.json. */
export interface AngleFile {
  readonly format: 'evenside-angles';
  readonly version: 1;
  readonly exercise: AnyExerciseId;
  readonly definition: ExerciseDefinition | null;
  readonly side: Side;
  /** What it is the angle of: docs/angles.md. */
  readonly angle: JointAngle;
  /** When counting began, ISO 8601, UTC; null: not known, as of a file. */
  readonly startedAt: string | null;
  /** Half the width of the 95 % interval of a range read from these angles, deg; null without a complete repetition. */
  readonly rangeUncertaintyDeg: number | null;
  /** On the clock of the source, whole ms. */
  readonly tMs: readonly (number | null)[];
  /** Smoothed without lag, to a hundredth of a degree; null where it was not measured. As many as `tMs`. */
  readonly angleDeg: readonly (number | null)[];
}

/** What a series is made from: a stored set's result, or the command line's. */
export interface AngleFileOf {
  readonly result: Pick<SetResult, 'exercise' | 'side' | 'curve' | 'summary'>;
  readonly definition: ExerciseDefinition | null;
  readonly startedAt: string | null;
}

/** @throws when an own exercise comes without its definition */
export function angleFile({ result, definition, startedAt }: AngleFileOf): AngleFile {
  const { exercise, side, curve, summary } = result;
  const which = exercise === 'own' ? definition : exercise;
  if (which === null) throw new Error('angleFile requires the definition of an own exercise, got none');
  return {
    format: 'evenside-angles',
    version: 1,
    exercise,
    definition,
    side,
    angle: exerciseOf(which).angle,
    startedAt,
    rangeUncertaintyDeg: degCell(summary?.uncertaintyDeg),
    tMs: curve.tMs.map(msCell),
    angleDeg: curve.angleDeg.map(degCell),
  };
}

/** The same as CSV: one row a frame. */
export function angleTable(of: AngleFileOf): string {
  const { tMs, angleDeg } = angleFile(of);
  return csvOf(
    [
      { name: 't_ms', cell: (i: number) => tMs[i] ?? null },
      { name: 'angle_deg', cell: (i) => angleDeg[i] ?? null },
    ],
    tMs.map((_, i) => i),
  );
}
