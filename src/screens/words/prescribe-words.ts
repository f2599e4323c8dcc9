import type { DoseField } from '../../dose/dose.ts';
import type { Standing } from '../../dose/usual-dose.ts';
import type { NumberWords } from './plan-words.ts';

/** Texts of prescribing: legs, cautions, where a dose comes from, the rule in sentences, who decides. */
export interface PrescribeWords {
  /** Above the editor when a therapist decides. */
  readonly lead: string;
  readonly legs: {
    /** Of the whole plan. */
    readonly hint: string;
    readonly title: string;
    readonly same: string;
    readonly apart: string;
    readonly keeps: (leg: string) => string;
    readonly copyTo: (leg: string) => string;
    /** Lines that the editor does not show. */
    readonly beyond: (n: number) => string;
  };
  readonly cautions: {
    readonly title: (n: number) => string;
    /** After the one that stays. */
    readonly stays: string;
  };
  readonly standing: Record<Exclude<Standing, 'decided'>, string>;
  /** After a dose, in brackets. */
  readonly usualShort: string;
  /** On the printed sheet, before what holds for every exercise. */
  readonly ofAll: string;
  readonly decided: Record<'therapist' | 'patient', string>;
  readonly more: string;
  readonly rule: {
    /** When the first step up comes, and when the next ones do; what comes then is said after it. */
    readonly after: (goodDays: number) => string;
    readonly next: string;
    /** A step up: by how much, and how much at most. */
    readonly up: Record<DoseField, (by: number, most: number) => string>;
    readonly never: string;
    readonly back: (rise: number, leastSets: number, leastReps: number) => string;
    readonly settled: (points: number) => string;
    readonly afterFlare: (goodDays: number) => string;
    readonly done: (percent: number) => string;
    readonly fresh: (days: number) => string;
    readonly by: Record<DoseField, NumberWords>;
    readonly first: string;
  };
  readonly decides: {
    readonly title: string;
    readonly patient: string;
    readonly therapist: string;
    readonly save: string;
    readonly saveAndGive: string;
  };
}
