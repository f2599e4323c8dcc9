import type { Side } from '../pose/landmarks.ts';
import type { Dose, DoseLimits } from './dose.ts';
import type { CautionId, PrescribedExercise, PrescribedExerciseId, Target } from './prescribed-exercise.ts';
import { type DoseChange, SYMPTOM_LIMIT, THRESHOLDS } from './progression-rule.ts';

interface Offer extends Pick<PrescribedExercise, 'tempoS' | 'restS' | 'spread' | 'daysAWeek' | 'target'> {
  readonly start: Dose;
  readonly limits: DoseLimits;
  readonly steps: readonly DoseChange[];
  readonly cautions: readonly CautionId[];
}

const dose = (setsADay: number, repsASet: number, holdS = 0): Dose => ({ setsADay, repsASet, holdS });
type Bounds = readonly [least: number, most: number];
const limits = (sets: Bounds, reps: Bounds, hold: Bounds = [0, 0]): DoseLimits => ({
  setsADay: { least: sets[0], most: sets[1] },
  repsASet: { least: reps[0], most: reps[1] },
  holdS: { least: hold[0], most: hold[1] },
});
const SETS = { field: 'setsADay', by: 1 } as const;
const FIVE_REPS = { field: 'repsASet', by: 5 } as const;
const FULL: Target = { kind: 'full' };
const UP_TO_SYMPTOMS: Target = { kind: 'symptoms' };
const SITTING: readonly CautionId[] = ['stop-if-worse', 'clear-floor'];

/**
 * Common practice, each of it; no trial of a dose for weakness or irritation of the L5 root was found. Home doses of nerve glides in texts are around
 * 10 repetitions, up to 3 sets, 1 to 3 times a day (from memory). Strengthening on 2 to 3 days a week: ACSM 2009, second-hand, for the heel stand.
 */
const OFFERS: Readonly<Record<PrescribedExerciseId, Offer>> = {
  'nerve-glide': {
    // One set on the first day; a second one only after a day that felt good.
    start: dose(1, 10),
    limits: limits([1, 3], [5, 15]),
    steps: [SETS, FIVE_REPS],
    target: UP_TO_SYMPTOMS,
    tempoS: 4,
    restS: 60,
    spread: 'day',
    daysAWeek: 7,
    cautions: ['stop-if-worse', 'no-strong-pull', 'up-to-symptoms'],
  },
  'toe-lift': {
    start: dose(3, 15),
    limits: limits([1, 3], [5, 20]),
    steps: [SETS, FIVE_REPS],
    target: FULL,
    tempoS: 3,
    restS: 60,
    spread: 'day',
    daysAWeek: 7,
    cautions: SITTING,
  },
  'foot-tap': {
    start: dose(3, 15),
    limits: limits([1, 3], [5, 20]),
    steps: [SETS, FIVE_REPS],
    target: FULL,
    tempoS: 2,
    restS: 60,
    spread: 'day',
    daysAWeek: 7,
    cautions: SITTING,
  },
  'leg-raise': {
    start: dose(1, 10),
    limits: limits([1, 3], [5, 15]),
    steps: [SETS, FIVE_REPS],
    target: UP_TO_SYMPTOMS,
    tempoS: 5,
    restS: 60,
    spread: 'day',
    daysAWeek: 7,
    cautions: ['stop-if-worse', 'no-strong-pull', 'up-to-symptoms', 'keep-breathing'],
  },
  'knee-straighten': {
    start: dose(2, 10, 2),
    limits: limits([1, 3], [5, 15], [0, 5]),
    steps: [FIVE_REPS, SETS, { field: 'holdS', by: 1 }],
    target: UP_TO_SYMPTOMS,
    tempoS: 5,
    restS: 60,
    spread: 'day',
    daysAWeek: 7,
    cautions: [...SITTING, 'up-to-symptoms'],
  },
  'heel-stand': {
    start: dose(1, 5, 5),
    limits: limits([1, 3], [3, 10], [3, 15]),
    steps: [{ field: 'holdS', by: 2 }, { field: 'repsASet', by: 1 }, SETS],
    target: FULL,
    tempoS: null,
    restS: 60,
    spread: 'together',
    daysAWeek: 3,
    cautions: ['stop-if-worse', 'hold-on', 'clear-floor', 'keep-breathing'],
  },
};

/** The dose offered for an exercise. @param id UUID of the new line */
export function startingDose(exercise: PrescribedExerciseId, id: string, sides: readonly Side[]): PrescribedExercise {
  const { steps, limits: bounds, ...offer } = OFFERS[exercise];
  const progression = { ...THRESHOLDS, steps, limits: bounds };
  return { ...offer, id, exercise, sides, symptomLimit: SYMPTOM_LIMIT, progression, basis: 'common-practice' };
}
