import { deg, ms, ratio } from '../units.ts';
import type { CatalogueExercise } from './exercise.ts';

/** Seated, heel down, the forefoot lifts and lowers: active, non-weight-bearing ankle dorsiflexion. */
export const footTap: CatalogueExercise = {
  id: 'foot-tap',
  posture: 'upright',
  seenBy: ['pose', 'stickers'],
  angle: 'ankle-dorsiflexion',
  segments: ['foot', 'shank'],
  rule: {
    direction: 'rises',
    // The picture's motion sees a foot turn to a few tenths of a degree; two degrees is a movement, not noise.
    noticeDeg: deg(2),
    // Weak feet lift by 5 to 10 degrees; less than 3 is no dorsiflexion that a therapist would count. Chosen.
    leastDeg: deg(3),
    completeShare: ratio(0.5),
    // Healthy people reach 31.7 taps in 10 s (Numasawa et al. 2012, Spine 37:108): 315 ms each; a tap is out of rest for at least half of that.
    leastMs: ms(120),
    readyMs: ms(600),
    stillDeg: deg(4),
  },
  // A full active lift is about 13 degrees (Soucie et al. 2011, Haemophilia 17:500, from memory); the fastest taps last 300 ms.
  acceleration: 4e6,
};
