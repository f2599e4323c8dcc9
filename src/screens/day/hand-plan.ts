import type { Dose } from '../../dose/dose.ts';
import type { PrescribedExerciseId } from '../../dose/prescribed-exercise.ts';
import type { Side } from '../../pose/landmarks.ts';

/** A set to be counted without the camera. */
export interface HandPlan {
  readonly exercise: PrescribedExerciseId;
  readonly side: Side;
  /** The line of the prescription; null: nobody prescribed it. */
  readonly itemId: string | null;
  readonly dose: Pick<Dose, 'repsASet' | 'holdS'>;
  /** Null: at one's own pace. */
  readonly tempoS: number | null;
}
