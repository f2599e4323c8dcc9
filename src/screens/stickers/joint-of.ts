import { exerciseOf } from '../../exercises/catalogue.ts';
import type { ExerciseId } from '../../exercises/exercise.ts';
import type { StickerJoint } from '../words/sticker-words.ts';

/** Whose stickers an exercise needs. */
export const jointOf = (exercise: ExerciseId): StickerJoint =>
  exerciseOf(exercise).angle === 'great-toe-extension' ? 'toe' : 'ankle';
