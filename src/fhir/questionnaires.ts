import type { SymptomKind } from '../symptoms/felt.ts';
import type { RedFlagId } from '../symptoms/red-flags.ts';
import type { BIG_TOE, SelfCheckId } from '../symptoms/self-check.ts';
import type { Term } from './terms.ts';

/** One question. `linkId` is unique in its questionnaire. */
export interface Question {
  readonly linkId: string;
  readonly text: string;
  readonly type: 'integer' | 'boolean' | 'quantity' | 'date' | 'text' | 'choice' | 'group';
  /** Several answers. */
  readonly repeats?: true;
  /** Of a choice: answers by their code, or any place of the body. */
  readonly options?: readonly Term<'answer'>[] | 'body-site';
  /** Of a group. */
  readonly items?: readonly Question[];
}

export const RED_FLAG_QUESTIONS: Readonly<Record<RedFlagId, string>> = {
  'saddle-numbness': 'New or worse: numbness between the legs, around the genitals or the back passage',
  'bladder-bowel': 'New or worse: trouble starting or feeling urine or stool, or leaking',
  'sexual-sensation': 'New or worse: loss of feeling or of function during sex',
  'both-legs-weak': 'New or worse: weakness, pain or numbness in both legs',
  'foot-drop-worse': 'New or worse: a foot or leg that gets weaker, a foot that drops or slaps',
  'fever-or-fall': 'New or worse: fever, weight lost without trying, or severe new pain after a fall or with a history of cancer',
};

export const SELF_CHECK_QUESTIONS: Readonly<Record<SelfCheckId, string>> = {
  'big-toe': 'Big toe against a finger',
  'heel-walk': 'Steps on the heels before the forefoot came down, of ten',
  'heel-stand': 'Standing on the heels: how long the forefoot stayed up',
  'foot-slap': 'The foot slaps when walking',
  'forefoot-sinks': 'The forefoot sinks when walking',
};

/** Written out, as all that is asked: the questions of a version stay as they are, and nothing of the first page waits for this part of the program. */
const KINDS: Readonly<Record<SymptomKind, true>> = { pain: true, tingling: true, numbness: true, weakness: true };
const TOE: Readonly<Record<(typeof BIG_TOE)[number], true>> = {
  'cannot-lift': true,
  'easily-pushed-down': true,
  'as-strong': true,
};
const keysOf = <K extends string>(all: Readonly<Record<K, unknown>>): readonly K[] => Object.keys(all) as K[];

const FELT: readonly Question[] = [
  { linkId: 'intensity', text: 'How strong it is now, 0 (nothing) to 10 (the worst imaginable)', type: 'integer' },
  { linkId: 'kinds', text: 'What is felt now', type: 'choice', repeats: true, options: ['none', ...keysOf(KINDS)] },
  { linkId: 'places', text: 'Where it is felt now', type: 'choice', repeats: true, options: 'body-site' },
];

const CHECK_TYPES: Readonly<Record<SelfCheckId, Pick<Question, 'type' | 'options'>>> = {
  'big-toe': { type: 'choice', options: keysOf(TOE) },
  'heel-walk': { type: 'integer' },
  'heel-stand': { type: 'quantity' },
  'foot-slap': { type: 'boolean' },
  'forefoot-sinks': { type: 'boolean' },
};
const checksOf = (side: 'left' | 'right'): Question => ({
  linkId: side,
  text: side === 'left' ? 'Left leg' : 'Right leg',
  type: 'group',
  items: keysOf(SELF_CHECK_QUESTIONS).map((check) => ({
    linkId: `${side}.${check}`,
    text: SELF_CHECK_QUESTIONS[check],
    repeats: true,
    ...CHECK_TYPES[check],
  })),
});

/** What is asked, by the kind of the diary's entry. */
export const QUESTIONNAIRES = {
  symptoms: {
    title: 'Symptoms before or after a set',
    items: [{ linkId: 'moment', text: 'When it was asked', type: 'choice', options: ['before-set', 'after-set'] }, ...FELT],
  },
  'check-in': {
    title: 'Check-in on the next day',
    items: [
      { linkId: 'about-day', text: 'The day it looks back on', type: 'date' },
      { linkId: 'worst', text: 'How strong it was at its worst since the sets of that day, 0 to 10', type: 'integer' },
      {
        linkId: 'afterwards',
        text: 'Whether the sets stirred something up',
        type: 'choice',
        options: ['no-flare', 'settled', 'not-settled'],
      },
      { linkId: 'weakness', text: 'Strength of leg and foot', type: 'choice', options: ['as-before', 'worse'] },
      ...FELT,
    ],
  },
  'red-flags': {
    title: 'Warning signs: any yes stops the exercises',
    items: keysOf(RED_FLAG_QUESTIONS).map((id) => ({ linkId: id, text: RED_FLAG_QUESTIONS[id], type: 'boolean' })),
  },
  clearance: {
    title: 'A clinician has seen the person after a stop',
    items: [
      { linkId: 'seen', text: 'Seen by a clinician, and free to go on', type: 'boolean' },
      { linkId: 'note', text: 'Who it was and what they said, in the person’s words', type: 'text' },
    ],
  },
  'self-check': { title: 'Checks of strength, done alone', items: [checksOf('left'), checksOf('right')] },
} as const satisfies Readonly<Record<string, { readonly title: string; readonly items: readonly Question[] }>>;
export type QuestionnaireName = keyof typeof QUESTIONNAIRES;
