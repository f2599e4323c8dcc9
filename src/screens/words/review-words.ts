import type { Verdict } from '../../compare/range-difference.ts';
import type { ProposalAnswer } from '../../dose/proposal-history.ts';
import type { AngleMarkFor, FootHeld, MarkMethod, MarkSource, MarkZero } from '../../symptoms/angle-mark.ts';
import type { SymptomShift } from '../../symptoms/symptom-shift.ts';

/** More, less, or no change that is sure. */
export type Direction = 'more' | 'less' | 'unsure';

/** Texts of the therapist's review of one person. */
export interface ReviewWords {
  readonly title: string;
  /** The way to it. */
  readonly open: string;
  readonly all: string;
  readonly none: string;
  readonly attention: {
    readonly title: string;
    readonly nothing: string;
    readonly stopped: string;
    readonly contact: (exercise: string) => string;
    readonly flares: (days: number, last: string) => string;
    readonly quiet: (days: number, last: string) => string;
    readonly never: (days: number) => string;
  };
  readonly glance: {
    readonly title: string;
    readonly strength: string;
    readonly ofTen: (earlier: string, later: string) => string;
    readonly strengthVerdict: Record<Direction, (limit: string) => string>;
    readonly strengthHow: (daysEach: number) => string;
    readonly place: string;
    readonly shift: Record<SymptomShift['kind'], string>;
    readonly nowhere: string;
    readonly placeHow: string;
    readonly notEnough: string;
    readonly nextDay: string;
    readonly mornings: (well: number, told: number) => string;
    readonly notSettled: (n: number) => string;
    readonly unanswered: (days: number) => string;
    readonly noMornings: string;
    readonly done: string;
    readonly line: string;
    readonly range: string;
    readonly change: string;
    readonly other: string;
    readonly dose: string;
    readonly direction: Record<Direction, string>;
    /** Of one leg against the other. */
    readonly legs: Record<Direction, string>;
    readonly difference: (d: string, limit: string) => string;
    readonly noRange: string;
    readonly onlyDay: string;
    readonly noOther: string;
    readonly tooFew: string;
    readonly errors: string;
  };
  readonly lines: {
    readonly title: string;
    readonly target: (target: string) => string;
    readonly doneDays: string;
    readonly doneWeeks: string;
    readonly daysTable: string;
    readonly weeksTable: string;
    readonly rangeTitle: string;
    readonly rangeDrawn: string;
    readonly setsTable: string;
    readonly when: string;
    readonly reps: string;
    readonly againstTarget: string;
    /** What the marks mean, against the target. */
    readonly target3: Record<'below' | 'within' | 'above', string>;
    readonly set: string;
    readonly error: string;
    readonly band: string;
    readonly otherLeg: string;
    readonly notMeasured: string;
  };
  readonly symptoms: {
    readonly title: string;
    readonly strengthTitle: string;
    readonly strengthDrawn: string;
    readonly marks: Record<'told' | 'settled' | 'not-settled', string>;
    readonly placeTitle: string;
    readonly placeDrawn: string;
    /** From the spine outwards, one for each step of the distance. */
    readonly places: readonly string[];
    readonly moved: string;
    readonly table: string;
  };
  readonly checks: { readonly title: string };
  readonly marks: {
    readonly title: string;
    readonly none: string;
    readonly session: (day: string, exercise: string) => string;
    readonly what: string;
    readonly trials: string;
    readonly mean: string;
    readonly one: string;
    readonly how: string;
    readonly kinds: Record<AngleMarkFor, string>;
    readonly zero: Record<MarkZero, string>;
    readonly foot: Record<FootHeld, string>;
    readonly method: Record<MarkMethod, string>;
    readonly from: Record<MarkSource, string>;
    readonly corrected: (n: number, of: number) => string;
    readonly against: (what: string) => string;
    readonly verdict: Record<Verdict, (leg: string, d: string, limit: string) => string>;
    readonly tooFew: (what: string) => string;
  };
  readonly proposals: {
    readonly title: string;
    readonly now: string;
    readonly days: string;
    readonly proposed: string;
    readonly why: string;
    readonly outcome: string;
    readonly answer: Record<ProposalAnswer['kind'], (change: string) => string>;
    readonly everyDay: (n: number) => string;
    readonly noChange: string;
    readonly replayed: string;
  };
  readonly sets: {
    readonly title: string;
    readonly none: string;
    readonly byHand: string;
    readonly changed: (changed: number, of: number) => string;
    readonly struck: (n: number) => string;
    readonly added: (n: number) => string;
    readonly removedTitle: string;
    readonly removedOn: (day: string) => string;
    /** What the ± of a set is. */
    readonly error: string;
  };
  /** Changes by hand on a set's own page. */
  readonly edits: {
    readonly title: string;
    readonly strike: (n: number) => string;
    readonly restore: (n: number) => string;
    readonly strikeAdded: string;
    readonly restoreAdded: string;
    readonly add: string;
    readonly kept: string;
  };
}
