import type { Attention } from '../../dose/attention.ts';
import type { Person } from '../../record/person.ts';
import type { RedFlagId } from '../../symptoms/red-flags.ts';
import type { DayWords } from './day-words.ts';

type Flare = Extract<Attention, { kind: 'flare' }>;

/** The list of people, and one of them. */
export interface PeopleWords {
  readonly open: string;
  readonly openAbout: string;
  readonly title: string;
  readonly lead: string;
  readonly add: string;
  readonly none: string;
  readonly search: string;
  readonly noMatch: (text: string) => string;
  readonly damaged: (n: number) => string;
  readonly order: string;
  readonly orders: Record<'attention' | 'name' | 'heard', string>;
  /** How many there are, and how many of them need attention. */
  readonly counted: (all: number, needing: number) => string;
  readonly looking: string;
  readonly affected: Record<NonNullable<Person['affectedSide']> | 'unsaid', string>;
  readonly noPlan: string;
  readonly neverHeard: string;
  /** `ago`: "today", "3 days ago". */
  readonly heard: (ago: string) => string;
  readonly attention: {
    readonly stopped: Record<'now' | 'same-day' | 'weakness', string>;
    readonly flare: (ago: string, why: string) => string;
    readonly flareWhy: Record<Flare['reason'], string>;
    readonly step: (exercises: string) => string;
    readonly quiet: (days: number | null) => string;
    readonly calm: string;
  };
  readonly form: {
    readonly addTitle: string;
    readonly editTitle: string;
    readonly name: string;
    readonly nameHint: string;
    readonly noName: string;
    readonly side: string;
    readonly notes: string;
    readonly notesHint: string;
    readonly save: string;
    readonly cancel: string;
    /** For somebody who is not in the list yet. */
    readonly cancelNew: string;
  };
  readonly person: {
    readonly all: string;
    readonly edit: string;
    readonly attention: string;
    readonly seen: string;
    readonly seenAbout: string;
    readonly parts: Record<
      'review' | 'plan' | 'give' | 'measure' | 'report' | 'day',
      { readonly name: string; readonly about: string }
    >;
    readonly remove: string;
    readonly removeAsk: (name: string) => string;
    readonly removeYes: string;
    readonly removeNo: string;
    /** Stands over every screen of this person. */
    readonly whose: (name: string) => string;
    readonly planFor: (name: string) => string;
    /** Words for the therapist where one's own screens speak to the patient. */
    readonly exercises: string;
    readonly take: string;
    readonly noPlanTodo: string;
    /** A stopped day, for whoever treats the person. */
    readonly stop: DayWords['stop'];
    /** The signs, where the questions speak to the patient. */
    readonly flags: Record<RedFlagId, string>;
    readonly reportLead: string;
    readonly filesHint: string;
  };
}
