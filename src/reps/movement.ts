import type { Deg, Ms } from '../units.ts';

/** A sample of a joint's angle, positive in the direction of the exercise; null where it was not measured. */
export interface AngleSample {
  readonly tMs: Ms;
  readonly deg: Deg | null;
}

/** One movement there and back. Angles in the direction of the exercise (a falling angle has been turned round). */
export interface Movement {
  readonly startMs: Ms;
  readonly peakMs: Ms;
  readonly endMs: Ms;
  readonly startDeg: Deg;
  readonly peakDeg: Deg;
  readonly rangeDeg: Deg;
  /** How long it was held at the top, see `hold-time.ts`. */
  readonly holdMs: Ms;
  readonly complete: boolean;
}
