import type { ExerciseId, SeenBy } from '../exercises/exercise.ts';
import { type Deg, deg } from '../units.ts';
import { minimalDetectableChange } from './minimal-detectable-change.ts';

/**
 * What is set against what. `occasions`: one leg at two times, of which the tool's constant errors (this body, these clothes) fall out.
 * `legs`: left and right, of which they do not. `marks`: left and right again, by angles that somebody marked instead of whole repetitions.
 */
export type Between = 'occasions' | 'legs' | 'marks';

/** What a standard error was taken from. `repeated-renderings`: one rendered movement filmed again. `rendered-bodies`: residuals against known truth. */
export type ErrorBasis = 'repeated-renderings' | 'rendered-bodies';

export interface RangeError {
  /** Standard error of measurement of a set's range, deg. */
  readonly semDeg: Deg;
  readonly basis: ErrorBasis;
}

const filmedAgain = (semDeg: number): RangeError => ({ semDeg: deg(semDeg), basis: 'repeated-renderings' });
const residuals = (semDeg: number): RangeError => ({ semDeg: deg(semDeg), basis: 'rendered-bodies' });

/** Marked angles of leg raises, docs/agreement.md, rounded up; of foot taps and heel stands none were marked: taken for as good as these. */
const MARKED = residuals(1.8);

/**
 * SEM of a set's range for each exercise, from docs/accuracy.md, rounded up to a tenth of a degree: between occasions from "Repeatability", ten renderings of one
 * movement; between legs the standard deviation of the errors on all clips as reported ("fused": half the width of the 95 % limits of the range, over
 * 1.96). Heel stands were filmed four times only and have residuals for both. Nobody has been measured twice yet, and rendered bodies do not vary from day to
 * day as people do, so the true values are larger: those of clinical instruments are 1.3 to 2.8 degrees for the ankle (Konor et al. 2012, Int J Sports
 * Phys Ther 7:279) and 2.8 to 4.2 for a passive leg raise (2009, J Sports Sci Med 8:116, table 1).
 */
const RANGE_ERROR: Readonly<Record<ExerciseId, Readonly<Record<Between, RangeError>>>> = {
  'foot-tap': { occasions: filmedAgain(0.4), legs: residuals(0.7), marks: MARKED },
  'leg-raise': { occasions: filmedAgain(0.7), legs: residuals(1.5), marks: MARKED },
  // Not measured anew: a glide's foot is the foot tap's joint, its way is longer, and the lying foot is as large in the picture. Taken as the leg raise's, chosen.
  'nerve-glide': { occasions: residuals(1.5), legs: residuals(1.5), marks: MARKED },
  'heel-stand': { occasions: residuals(1), legs: residuals(1), marks: MARKED },
  'knee-straighten': { occasions: filmedAgain(1.2), legs: residuals(1.5), marks: MARKED },
  // Stickers: ranges of two rendered feet were out with a standard deviation of 0.19 to 0.25 deg as filmed, at 0.6 of the light and at a low bit rate, 0.25 to 0.43 under heavy
  // noise (13 lifts each); the largest of these, doubled and rounded down, since stickers are taken off and put on again between occasions, which nobody measured. Chosen.
  'toe-lift': { occasions: residuals(0.8), legs: residuals(0.8), marks: residuals(0.8) },
};

/**
 * Foot taps by stickers: on drawn films (small stickers, noise of 1 to 8 grey levels, light down to a half; tests/run/sticker-taps-error.test.ts) ranges were out with a
 * standard deviation of 0.09 deg (240 taps), on rendered ones by 0.12 at most (docs/accuracy.md). The larger is doubled, as the toe's and for its reason, and joined with what a
 * camera turned by 10 degrees makes of a tap of 20 (0.3); rounded up.
 */
const TAPS_BY_STICKERS = residuals(0.4);

/** The error of a set's range in this exercise. @param seenBy what the set was measured through; other exercises than foot taps are measured in one way only */
export const rangeErrorOf = (exercise: ExerciseId, between: Between, seenBy: SeenBy = 'pose'): RangeError =>
  exercise === 'foot-tap' && seenBy === 'stickers' && between !== 'marks' ? TAPS_BY_STICKERS : RANGE_ERROR[exercise][between];

/** MDC95 of a set's range in this exercise, deg. */
export const rangeChangeOf = (exercise: ExerciseId, between: Between, seenBy: SeenBy = 'pose'): Deg =>
  deg(minimalDetectableChange(rangeErrorOf(exercise, between, seenBy).semDeg));
