import type { SeenBy } from '../exercises/exercise.ts';
import type { MeasuredRep } from '../measure/set-result.ts';

/** What repetitions were measured through; `pose` as soon as one of them was, whose error is the larger. */
export const seenByOf = (reps: readonly Pick<MeasuredRep, 'source'>[]): SeenBy =>
  reps.length > 0 && reps.every(({ source }) => source === 'stickers') ? 'stickers' : 'pose';
