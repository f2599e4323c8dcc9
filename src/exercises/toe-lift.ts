import { deg, ms, ratio } from '../units.ts';
import type { CatalogueExercise } from './exercise.ts';

/** Seated, the foot flat, the big toe lifts and lowers: extension of the great toe, seen close by through three stickers. */
export const toeLift: CatalogueExercise = {
  id: 'toe-lift',
  posture: 'upright',
  seenBy: ['stickers'],
  angle: 'great-toe-extension',
  segments: [],
  rule: {
    direction: 'rises',
    // Stickers show a toe to half a degree from frame to frame; five times that is a movement, not noise. Chosen.
    noticeDeg: deg(2.5),
    // A weak toe lifts by 5 to 10 degrees, and that counts; less than 3 is no lift that a therapist would count. Chosen.
    leastDeg: deg(3),
    completeShare: ratio(0.5),
    // The quickest lift that is still meant takes a third of a second; it is out of rest for at least half of that. Chosen.
    leastMs: ms(150),
    readyMs: ms(600),
    stillDeg: deg(3),
  },
  // Sixty degrees, there and back, in half a second. Chosen.
  acceleration: 4e6,
};
