import { deg, ms, ratio } from '../units.ts';
import type { CatalogueExercise } from './exercise.ts';

/** Seated, the knee straightens and bends again: knee flexion falls. */
export const kneeStraighten: CatalogueExercise = {
  id: 'knee-straighten',
  posture: 'upright',
  seenBy: ['pose'],
  angle: 'knee-flexion',
  segments: ['thigh', 'shank'],
  rule: {
    direction: 'falls',
    noticeDeg: deg(5),
    leastDeg: deg(12),
    completeShare: ratio(0.5),
    leastMs: ms(400),
    readyMs: ms(600),
    stillDeg: deg(6),
  },
  acceleration: 3e5,
};
