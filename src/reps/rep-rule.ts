import type { Deg, Ms, Ratio } from '../units.ts';

/** What counts as a repetition of an exercise. All times in ms, so that 15 and 60 frames a second agree. */
export interface RepRule {
  /** Whether the measured angle rises or falls in the movement that counts. */
  readonly direction: 'rises' | 'falls';
  /** The smallest movement that is noticed at all; below it everything is noise. */
  readonly noticeDeg: Deg;
  /** A movement of less than this never counts as complete, however small the person's others are. */
  readonly leastDeg: Deg;
  /** Complete: at least this share of the person's own usual range in this set. */
  readonly completeShare: Ratio;
  /** A movement from start to end takes at least this long. */
  readonly leastMs: Ms;
  /** The joint must hold still for this long, in the right posture, before movements count. */
  readonly readyMs: Ms;
  /** Still: the angle varies by at most this much. */
  readonly stillDeg: Deg;
}
