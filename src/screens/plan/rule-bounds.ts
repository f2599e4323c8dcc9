import type { DoseField } from '../../dose/dose.ts';
import type { Threshold } from '../../dose/progression-rule.ts';
import { MOST_PRESCRIBED } from '../../record/prescription-shape.ts';
import { MOST_INTENSITY } from '../../symptoms/felt.ts';

interface Bounds {
  readonly least: number;
  readonly most: number;
}

/** What each threshold may be: the same bounds as the stored plan has. `doneShare` is told in percent. */
export const THRESHOLD_BOUNDS: Readonly<Record<Threshold, Bounds>> = {
  clearRise: { least: 1, most: MOST_INTENSITY },
  settledWithin: { least: 0, most: MOST_INTENSITY },
  goodDays: { least: 1, most: MOST_PRESCRIBED.days },
  goodDaysAfterFlare: { least: 1, most: MOST_PRESCRIBED.days },
  doneShare: { least: 0, most: 100 },
  freshDays: { least: 1, most: MOST_PRESCRIBED.days },
};

/** What a limit of the dose may be. */
export const LIMIT_BOUNDS: Readonly<Record<DoseField, Bounds>> = {
  setsADay: { least: 1, most: MOST_PRESCRIBED.sets },
  repsASet: { least: 1, most: MOST_PRESCRIBED.reps },
  holdS: { least: 0, most: MOST_PRESCRIBED.holdS },
};
