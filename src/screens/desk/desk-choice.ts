import type { Crop } from '../../capture/crop.ts';
import type { SharedWindow } from '../../capture/shared-window.ts';
import { EXERCISE_IDS, type ExerciseId } from '../../exercises/exercise.ts';
import type { Side } from '../../pose/landmarks.ts';
import type { MarkSource } from '../../symptoms/angle-mark.ts';

/** Where the desk's pictures come from. */
export const DESK_SOURCES = ['window', 'camera', 'file', 'photo'] as const satisfies readonly MarkSource[];
export type DeskSource = (typeof DESK_SOURCES)[number];

/** Of a nerve glide no single angle is marked: foot and head are looked at together, over a set. Stickers are not looked for at the desk. */
type DeskExerciseId = Exclude<ExerciseId, 'nerve-glide' | 'toe-lift'>;
export const DESK_EXERCISES = EXERCISE_IDS.filter((id): id is DeskExerciseId => id !== 'nerve-glide' && id !== 'toe-lift');

/** What is to be measured, and in which pictures; kept from one recording to the next. */
export interface DeskChoice {
  readonly exercise: DeskExerciseId;
  readonly side: Side;
  readonly source: DeskSource;
  readonly shared: SharedWindow | null;
  readonly crop: Crop | null;
  readonly film: File | null;
  readonly photo: File | null;
}

/** What is measured, without where. */
export interface DeskTask extends Pick<DeskChoice, 'side'> {
  readonly exercise: ExerciseId;
}
