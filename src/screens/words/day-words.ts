import type { FlareReason } from '../../dose/day-verdict.ts';
import type { HandSet } from '../../dose/done-set.ts';
import type { DoseField } from '../../dose/dose.ts';
import type { CautionId } from '../../dose/prescribed-exercise.ts';
import type { HoldReason, Proposal } from '../../dose/propose.ts';
import type { LineState } from '../../dose/today-line.ts';
import type { QuestionsReason } from '../../symptoms/questions-due.ts';
import type { RedFlagId, Urgency } from '../../symptoms/red-flags.ts';

/** Texts of the patient's day. Moments and days come in as people write them. */
export interface DayWords {
  readonly title: string;
  readonly noPlan: string;
  readonly noPlanTodo: string;
  readonly makePlan: string;
  readonly examplePlan: string;
  readonly exampleNote: string;
  readonly removeExample: string;
  /** From the start screen. */
  readonly open: string;
  readonly changePlan: string;
  readonly reminders: string;
  readonly remindersFile: string;
  readonly reminder: (exercise: string, leg: string, reps: number) => string;
  readonly reminderAbout: string;
  readonly dose: (reps: number, holdS: number) => string;
  readonly setsDone: (done: number, due: number) => string;
  readonly state: Record<Exclude<LineState, 'later' | 'rest-day'>, string>;
  /** Of a line that is done and must not be done once more. */
  readonly doneNoMore: string;
  readonly later: (time: string) => string;
  readonly restDay: (day: string) => string;
  readonly start: string;
  readonly again: string;
  readonly allDone: string;
  readonly nextAt: (exercise: string, leg: string, time: string) => string;
  /** Until a set may come that waits for a short rest only: minutes and seconds. */
  readonly resting: (clock: string) => string;
  readonly rested: string;
  readonly notify: string;
  readonly notifying: string;
  readonly notifyRefused: string;
  readonly doNow: (exercise: string, leg: string) => string;
  readonly questionsCard: Record<QuestionsReason, string>;
  readonly questionsOpen: string;
  readonly checkInCard: (day: string) => string;
  readonly checkInOpen: string;
  readonly stop: {
    readonly title: Record<Urgency | 'weakness', string>;
    readonly todo: Record<Urgency | 'weakness', string>;
    readonly signs: string;
    readonly cleared: string;
    readonly clearedAsk: string;
    readonly clearedNote: string;
    readonly clearedYes: string;
    readonly clearedNo: string;
  };
  readonly questions: {
    readonly title: string;
    readonly lead: string;
    readonly flags: Record<RedFlagId, string>;
    readonly yes: string;
    readonly no: string;
    readonly done: string;
    readonly open: (n: number) => string;
    readonly noneOfThese: string;
    readonly someOfThese: string;
  };
  readonly go: {
    readonly cautions: string;
    readonly caution: Record<CautionId, string>;
    readonly target: { readonly range: (from: string, to: string) => string; readonly full: string; readonly symptoms: string };
    readonly tempo: (s: number) => string;
    readonly camera: string;
    readonly byHand: string;
    /** Fewer than prescribed, for this one set. */
    readonly reps: string;
    /** Less from now on. */
    readonly less: string;
    readonly lessTitle: string;
    readonly notDue: string;
    readonly back: string;
  };
  readonly byHand: {
    readonly one: string;
    readonly undo: string;
    readonly done: string;
    readonly keys: string;
    /** The other way of counting. */
    readonly instead: Record<HandSet['counted'], string>;
    readonly beatStart: string;
    readonly beatPause: string;
    readonly beatLeads: string;
    readonly beatKeys: string;
    readonly tempo: string;
    readonly faster: string;
    readonly slower: string;
  };
  readonly proposal: {
    readonly change: Record<DoseField, (from: number, to: number) => string>;
    readonly kind: Record<Proposal['kind'], string>;
    readonly good: (days: number) => string;
    readonly hold: Record<HoldReason['kind'], string>;
    readonly flare: Record<FlareReason['kind'], string>;
    readonly take: string;
    readonly keep: string;
    readonly contact: string;
  };
}
