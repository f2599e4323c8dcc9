import type { Source } from '../symptoms/evidence.ts';
import type { DoseField, DoseLimits } from './dose.ts';

/** One change of the dose: more of this field, by so much. */
export interface DoseChange {
  readonly field: DoseField;
  readonly by: number;
}

/** What decides about the next dose. Every number is the therapist's to change. */
export interface ProgressionRule {
  /** Tried in this order when stepping up, the first with room left is taken; backwards when stepping back. */
  readonly steps: readonly DoseChange[];
  readonly limits: DoseLimits;
  /** Points of 0 to 10 from which a rise is clear and steps back; less is mild. */
  readonly clearRise: number;
  /** Points above the time before the sets at which the next morning still counts as settled. */
  readonly settledWithin: number;
  /** Good days in a row before a step up, and after a flare. */
  readonly goodDays: number;
  readonly goodDaysAfterFlare: number;
  /** Share of the repetitions due that makes a day count as done. */
  readonly doneShare: number;
  /** A good day older than this many days is no reason to step up. */
  readonly freshDays: number;
}

export type Threshold = Exclude<keyof ProgressionRule, 'steps' | 'limits'>;

/** The thresholds offered. */
export const THRESHOLDS: Readonly<Record<Threshold, number>> = {
  clearRise: 2,
  settledWithin: 1,
  goodDays: 1,
  goodDaysAfterFlare: 2,
  doneShare: 0.8,
  freshDays: 3,
};

/** Offered as symptom limit: points of 0 to 10. */
export const SYMPTOM_LIMIT = 5;

const COMMON = 'Common practice; no figure was found.';

/** Where the numbers offered come from. None comes from a trial of progression in nerve-root pain: none was found. */
export const THRESHOLD_SOURCES: Readonly<Record<Threshold | 'symptomLimit', readonly Source[]>> = {
  clearRise: [
    { cite: 'Childs JD et al. 2005, Spine 30:1331: minimal detectable change 2 points', readAs: 'abstract' },
    { cite: 'Suzuki H et al. 2020, PLoS ONE 15(3):e0229228: cut-off 1.3 to 1.8, rounded to 2', readAs: 'read' },
  ],
  settledWithin: [
    {
      cite: 'One point is within the error of the scale; that it must settle by the next morning: Thomeé 1997, tendons',
      readAs: 'from-memory',
    },
  ],
  goodDays: [{ cite: COMMON, readAs: 'advice' }],
  goodDaysAfterFlare: [{ cite: COMMON, readAs: 'advice' }],
  doneShare: [{ cite: COMMON, readAs: 'advice' }],
  freshDays: [{ cite: COMMON, readAs: 'advice' }],
  symptomLimit: [
    { cite: 'Up to 5 acceptable: Thomeé 1997, tendons; secondary pages print variants', readAs: 'from-memory' },
    {
      cite: 'Silbernagel KG et al. 2007, Am J Sports Med 35:897: activity under pain monitoring did no harm, Achilles tendon, n = 38',
      readAs: 'abstract',
    },
  ],
};
