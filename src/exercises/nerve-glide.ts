import { deg, ms, ratio } from '../units.ts';
import type { CatalogueExercise } from './exercise.ts';

/** Lying on the back, the leg held up by a strap: the foot points and comes back while the head lifts and rests. Counted by the foot. */
export const nerveGlide: CatalogueExercise = {
  id: 'nerve-glide',
  posture: 'lying',
  seenBy: ['pose'],
  angle: 'ankle-dorsiflexion',
  segments: ['foot', 'shank'],
  heldLeg: true,
  rule: {
    direction: 'falls',
    noticeDeg: deg(3),
    // A foot that points by less is no glide: they are done over 20 to 40 degrees. Chosen; as the head, see `reps/glide-cycles.ts`.
    leastDeg: deg(6),
    completeShare: ratio(0.4),
    leastMs: ms(600),
    // Longer than a glide's least: a foot that has held still for as long is not in one.
    readyMs: ms(700),
    // A foot in the air, seen by the points alone before its motion is followed, scatters by this much. Chosen.
    stillDeg: deg(7),
  },
  // Thirty degrees in a second. Chosen.
  acceleration: 1e5,
};
