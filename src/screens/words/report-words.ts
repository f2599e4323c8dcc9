import type { Verdict } from '../../compare/range-difference.ts';
import type { Proposal } from '../../dose/propose.ts';
import type { Side } from '../../pose/landmarks.ts';
import type { CheckIn } from '../../symptoms/check-in.ts';
import type { NotAnswered } from '../../symptoms/entry.ts';
import type { WeaknessCause } from '../../symptoms/weakness.ts';

/** A difference of ranges against its error; `d` is signed. */
type DifferenceWords = Record<Verdict, (d: string, limit: string) => string>;

/** Texts of the report for the therapist, and of the files. */
export interface ReportWords {
  readonly title: string;
  /** The way to it. */
  readonly open: string;
  readonly lead: string;
  readonly print: string;
  readonly setsFile: string;
  readonly repsFile: string;
  readonly calendarFile: string;
  readonly everythingFile: string;
  readonly filesHint: string;
  /** What is stored, but is in no file. */
  readonly damaged: (n: number) => string;
  readonly none: string;
  readonly period: (from: string, to: string) => string;
  readonly madeOn: (date: string) => string;
  /** A line to write on by hand: no name is stored. */
  readonly name: string;
  readonly invented: string;
  readonly exercise: string;
  /** The legs in a narrow place. */
  readonly sides: Record<Side, string>;
  readonly prescribed: {
    readonly title: string;
    readonly by: Record<'therapist' | 'patient', (date: string) => string>;
    readonly byName: (name: string) => string;
    readonly changed: (n: number) => string;
    readonly dose: string;
    readonly target: string;
    readonly range: (from: number, to: number) => string;
    readonly daysAWeek: (n: number) => string;
    readonly limit: (most: number) => string;
    readonly atFirst: (dose: string) => string;
  };
  readonly done: {
    readonly title: string;
    readonly sets: (done: number, due: number) => string;
    readonly days: (n: number) => string;
    readonly reps: (n: number) => string;
  };
  readonly measured: {
    readonly title: string;
    readonly none: string;
    readonly method: string;
    /** Added where a big toe was measured. */
    readonly toeMethod: string;
    readonly key: string;
    readonly errors: string;
    /** The median of every day, all with this error. */
    readonly daily: (days: string, error: string) => string;
    /** The same of the last days only. */
    readonly dailyLast: (days: string, error: string, n: number) => string;
    readonly target: Record<'below' | 'within' | 'above', (range: string) => string>;
    readonly change: DifferenceWords;
    readonly otherLeg: DifferenceWords;
    readonly changeTooFew: string;
    readonly otherTooFew: string;
    readonly onlyDay: string;
    readonly noOther: string;
  };
  readonly symptoms: {
    readonly title: string;
    readonly none: string;
    readonly day: string;
    readonly week: string;
    readonly strength: string;
    readonly furthest: string;
    readonly nextDay: string;
    readonly fromTo: (least: number, most: number) => string;
    readonly afterwards: Record<Exclude<CheckIn['afterwards'], NotAnswered>, string>;
    readonly weaker: string;
  };
  readonly checks: {
    readonly title: string;
    readonly none: string;
    readonly check: string;
    /** The first answer of these weeks and the last. */
    readonly fromTo: (first: string, last: string) => string;
    readonly worse: string;
    readonly steps: (n: number) => string;
  };
  readonly safety: {
    readonly title: string;
    readonly asked: (rounds: number) => string;
    readonly noYes: string;
    readonly unanswered: (n: number) => string;
    readonly yesTo: string;
    readonly weakness: Record<WeaknessCause['kind'], string>;
    readonly cleared: string;
    readonly stopped: string;
  };
  readonly steps: {
    readonly title: string;
    readonly proposed: string;
    readonly taken: string;
    readonly noneTaken: string;
    readonly kinds: Record<Proposal['kind'], string>;
    readonly by: Record<'rule' | 'patient', string>;
    readonly goodDays: string;
    readonly chosen: string;
  };
  readonly standing: string;
}
