import { deg, ms, ratio } from '../../src/units.ts';

/** Exercises that a therapist might define; invented. */
export const HEEL_SLIDE = {
  name: 'Heel slide',
  angle: 'knee-flexion',
  direction: 'rises',
  posture: 'lying',
  side: 'either',
  noticeDeg: deg(5),
  leastDeg: deg(12),
  completeShare: ratio(0.5),
  leastMs: ms(400),
} as const;

export const TOWEL_SCRUNCH = {
  name: 'Towel scrunch',
  angle: 'foot-elevation',
  posture: 'standing',
  direction: 'rises',
  side: 'either',
  noticeDeg: deg(3),
  leastDeg: deg(5),
  completeShare: ratio(0.5),
  leastMs: ms(300),
} as const;
