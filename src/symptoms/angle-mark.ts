import type { ExerciseId } from '../exercises/exercise.ts';
import type { Side } from '../pose/landmarks.ts';
import type { Deg } from '../units.ts';
import type { Entry } from './entry.ts';
import type { Place } from './place.ts';

/** What an angle was marked for: where symptoms begin, or where the movement ends. */
export const ANGLE_MARKS = ['first-symptom', 'limit'] as const;
export type AngleMarkFor = (typeof ANGLE_MARKS)[number];

/**
 * How the angle was come by. `followed`: from the smoothed curve of a whole recording; `landmarks`: from the pose model's points in one picture;
 * `corrected`: from points that a hand set.
 */
export type MarkMethod = 'followed' | 'landmarks' | 'corrected';

/** What the pictures were. */
export type MarkSource = 'camera' | 'window' | 'file' | 'photo';

/**
 * Where 0 is. `rest`: the joint's rest in the same recording, and degrees go in the direction of the movement; `own`: the joint's own angle as
 * docs/angles.md defines it, a leg's elevation from the horizontal. The two are never mixed in one mean.
 */
export type MarkZero = 'rest' | 'own';

/** How the foot was held. */
export const FOOT_HELD = ['pulled-up', 'relaxed', 'pointed'] as const;
export type FootHeld = (typeof FOOT_HELD)[number];

/** One angle that a therapist marked and kept. */
export interface AngleMark extends Entry {
  readonly kind: 'angle-mark';
  readonly exercise: ExerciseId;
  readonly side: Side;
  readonly mark: AngleMarkFor;
  /** Which time this mark was taken of this leg, with this zero, in its session, from 1. */
  readonly trial: number;
  readonly angleDeg: Deg;
  readonly zero: MarkZero;
  /** Half the width of the 95 % interval. */
  readonly errorDeg: Deg;
  readonly method: MarkMethod;
  readonly from: MarkSource;
  /** Null: not noted. */
  readonly foot: FootHeld | null;
  /** Where the symptom was felt; null: not noted. */
  readonly place: Place | null;
  /** UUID that trials taken together share. */
  readonly sessionId: string;
}
