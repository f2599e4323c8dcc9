import { deg, ms, ratio } from '../units.ts';
import type { CatalogueExercise } from './exercise.ts';

/** Lying on the back, the leg held up by a strap: the foot points and comes back while the head lifts and rests. Counted by the foot. */
export const nerveGlide: CatalogueExercise = {
  id: 'nerve-glide',
  posture: 'lying',
  seenBy: ['pose'],
  angle: 'ankle-dorsiflexion',
  segments: ['foot', 'shank'],
  rule: {
    direction: 'falls',
    noticeDeg: deg(3),
    // A foot that points by less is no glide: they are done over 20 to 40 degrees. Chosen; as the head, see `reps/glide-cycles.ts`.
    leastDeg: deg(6),
    completeShare: ratio(0.4),
    leastMs: ms(600),
    readyMs: ms(600),
    stillDeg: deg(5),
  },
  // Thirty degrees in a second. Chosen.
  acceleration: 1e5,
};
