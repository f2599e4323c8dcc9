import { deg, ms, ratio } from '../units.ts';
import type { CatalogueExercise } from './exercise.ts';

/** Standing at a support, weight on the heels, the forefeet up: how long the near one stays up. */
export const heelStand: CatalogueExercise = {
  id: 'heel-stand',
  posture: 'standing',
  seenBy: ['pose'],
  angle: 'foot-elevation',
  segments: ['foot'],
  rule: {
    direction: 'rises',
    noticeDeg: deg(2.5),
    // A forefoot this far off the floor is up: 7 mm at the ball of the foot. Chosen.
    leastDeg: deg(3),
    // What matters is how long, not how high: a low stand is one too. Chosen.
    completeShare: ratio(0.35),
    leastMs: ms(300),
    readyMs: ms(600),
    stillDeg: deg(4),
  },
  // The forefoot goes up by 20 degrees in a third of a second at the quickest. Chosen.
  acceleration: 1e6,
};
