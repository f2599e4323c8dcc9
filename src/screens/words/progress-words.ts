import type { SymptomShift } from '../../symptoms/symptom-shift.ts';

/** Texts of the last days and weeks. */
export interface ProgressWords {
  readonly title: string;
  readonly open: string;
  readonly lead: (from: string, to: string) => string;
  readonly none: string;
  readonly done: (done: number, due: number, days: number) => string;
  readonly nothingDue: string;
  readonly day: string;
  readonly sets: string;
  readonly setsOf: (done: number, due: number) => string;
  readonly range: string;
  readonly symptomsTitle: string;
  readonly worst: string;
  readonly furthest: string;
  readonly unsaid: string;
  readonly rangeNow: (deg: string, error: string) => string;
  readonly target: Record<'below' | 'within' | 'above', string>;
  readonly further: (deg: string) => string;
  readonly less: (deg: string) => string;
  readonly noChange: string;
  readonly tooFew: string;
  readonly otherFurther: (deg: string) => string;
  readonly otherLess: (deg: string) => string;
  readonly otherAlike: string;
  readonly shift: Record<SymptomShift['kind'], string>;
  readonly asTable: string;
  /** How many weeks are looked back on. */
  readonly weeks: (n: number) => string;
  readonly lookBack: string;
  readonly otherLeg: string;
  readonly doneDrawn: string;
  readonly rangeDrawn: string;
  readonly rangeDrawnTarget: string;
  readonly symptomsDrawn: string;
  readonly dayFull: Record<'rest' | 'none' | 'part' | 'all', string>;
}
