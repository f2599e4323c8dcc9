import { CAUTION_IDS, type CautionId, type PrescribedExercise } from './prescribed-exercise.ts';

/**
 * Said with every line, whatever its plan says: who exercises alone must know when to stop, and nobody who writes a plan can rule that out beforehand.
 */
export const ALWAYS_SAID: CautionId = 'stop-if-worse';

/** Those that a plan may have or not. */
export const CHOSEN_CAUTIONS: readonly CautionId[] = CAUTION_IDS.filter((id) => id !== ALWAYS_SAID);

/** What is said of a line before its sets: when to stop first, each once. */
export const cautionsOf = ({ cautions }: Pick<PrescribedExercise, 'cautions'>): readonly CautionId[] =>
  CAUTION_IDS.filter((id) => id === ALWAYS_SAID || cautions.includes(id));

/** The cautions of a line with one put in or taken out. `ALWAYS_SAID` stays. */
export const withCaution = (line: Pick<PrescribedExercise, 'cautions'>, id: CautionId, wanted: boolean): readonly CautionId[] =>
  cautionsOf({ cautions: wanted ? [...line.cautions, id] : line.cautions.filter((each) => each !== id) });
