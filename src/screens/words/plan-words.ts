import type { Target } from '../../dose/prescribed-exercise.ts';
import type { Threshold } from '../../dose/progression-rule.ts';

/** A number that can be changed: what it is, and its two buttons for those who do not see them. */
export interface NumberWords {
  readonly label: string;
  readonly fewer: string;
  readonly more: string;
}

/** Texts of the plan and its editor. */
export interface PlanWords {
  readonly title: string;
  readonly lead: string;
  readonly exercises: string;
  readonly side: string;
  readonly both: string;
  readonly basis: string;
  readonly save: string;
  /** Changes from an earlier opening of the editor, still there. */
  readonly unsaved: string;
  readonly dropUnsaved: string;
  readonly none: string;
  readonly setsADay: (n: number) => string;
  readonly change: string;
  readonly fields: Record<
    'setsADay' | 'repsASet' | 'holdS' | 'tempoS' | 'restS' | 'daysAWeek' | 'symptomLimit' | 'fromDeg' | 'toDeg',
    NumberWords
  >;
  readonly tempo: string;
  readonly ownPace: string;
  readonly paced: string;
  readonly target: string;
  readonly targets: Record<Target['kind'], string>;
  readonly rule: string;
  readonly thresholds: Record<Threshold, NumberWords>;
  readonly checks: string;
  readonly checksEvery: NumberWords;
  readonly limits: string;
  readonly least: string;
  readonly most: string;
  readonly badLimits: string;
  readonly badRange: string;
}
