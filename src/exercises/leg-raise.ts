import { deg, ms, ratio } from '../units.ts';
import type { CatalogueExercise } from './exercise.ts';

/** Lying on the back, the straight leg is lifted, by a strap or actively: leg elevation at the hip. */
export const legRaise: CatalogueExercise = {
  id: 'leg-raise',
  posture: 'lying',
  seenBy: ['pose'],
  angle: 'leg-elevation',
  segments: ['thigh', 'shank'],
  rule: {
    direction: 'rises',
    noticeDeg: deg(3.5),
    // Symptoms may begin at 15 degrees (people with radiculopathy: 35 on average, Fajolu et al. 2018, Int J Spine Surg 12:58). Chosen.
    leastDeg: deg(8),
    completeShare: ratio(0.5),
    leastMs: ms(500),
    readyMs: ms(600),
    stillDeg: deg(4),
  },
  acceleration: 1e5,
};
