import type { SeenBy } from '../exercises/exercise.ts';
import type { Side } from '../pose/landmarks.ts';
import type { Deg } from '../units.ts';
import type { Dose } from './dose.ts';
import type { ProgressionRule } from './progression-rule.ts';

/** The exercises that can be prescribed: all that are measured, and every one can be counted by hand. */
export const PRESCRIBED_EXERCISE_IDS = [
  'foot-tap',
  'leg-raise',
  'nerve-glide',
  'toe-lift',
  'heel-stand',
  'knee-straighten',
] as const;
export type PrescribedExerciseId = (typeof PRESCRIBED_EXERCISE_IDS)[number];

export const isPrescribedExerciseId = (name: string): name is PrescribedExerciseId =>
  (PRESCRIBED_EXERCISE_IDS as readonly string[]).includes(name);

/** How far to move. `symptoms`: only as far as symptoms start. `full`: through the full range. */
export type Target =
  | { readonly kind: 'range'; readonly fromDeg: Deg; readonly toDeg: Deg }
  | { readonly kind: 'full' }
  | { readonly kind: 'symptoms' };

/** What is said before the first set; the words are the screens'. */
export const CAUTION_IDS = [
  'stop-if-worse',
  'no-strong-pull',
  'up-to-symptoms',
  'hold-on',
  'clear-floor',
  'keep-breathing',
] as const;
export type CautionId = (typeof CAUTION_IDS)[number];

/** One line of a prescription. */
export interface PrescribedExercise {
  /**
   * UUID. A revision keeps it for as long as it is the same line, so that sets done before still belong to it. Where a revision parts the legs of a line or joins
   * two, `lines-now.ts` finds the line that goes on with a leg.
   */
  readonly id: string;
  readonly exercise: PrescribedExerciseId;
  /** One or both; the sets are due for each. */
  readonly sides: readonly Side[];
  /** What to begin with, for each side. What is due now: `currentDose`. */
  readonly start: Dose;
  readonly target: Target;
  /** How it is to be measured, where it can be in several ways; left out: as the person likes. */
  readonly seenBy?: SeenBy;
  /** Seconds for one repetition, up and down; null: at one's own pace. */
  readonly tempoS: number | null;
  /** The least rest between two sets of one leg, seconds. */
  readonly restS: number;
  /** `day`: the sets are spread over the waking day. `together`: one after the other, with the rest between. */
  readonly spread: 'day' | 'together';
  /** 1 to 7. */
  readonly daysAWeek: number;
  /** Above this intensity (0 to 10) no set is started, and a day that went above it was a flare. */
  readonly symptomLimit: number;
  readonly progression: ProgressionRule;
  readonly cautions: readonly CautionId[];
  /** `common-practice`: as offered. `therapist`: somebody decided on it. */
  readonly basis: 'common-practice' | 'therapist';
}
