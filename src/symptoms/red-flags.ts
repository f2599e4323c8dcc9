import type { Entry, NotAnswered } from './entry.ts';
import type { Source } from './evidence.ts';

const CKS: Source = { cite: 'NICE CKS Sciatica (lumbar radiculopathy), red flags, 2018 revision', readAs: 'second-hand' };
const GIRFT: Source = { cite: 'NHS England (GIRFT) national pathway for suspected cauda equina syndrome', readAs: 'read' };
const ONE_LEG: Source = { cite: 'General guidance on progressive weakness of one leg', readAs: 'second-hand' };
const OTHER_CAUSES: Source = { cite: 'NICE NG59 1.1: think of other causes when symptoms are new or change', readAs: 'read' };
const EXAMPLES: Source = {
  cite: 'Fever, lost weight, a fall and a history of cancer as examples of other causes: general guidance',
  readAs: 'from-memory',
};

/** `now`: the emergency service, at night too; `same-day`: a doctor or the spine service today. */
export type Urgency = 'now' | 'same-day';

export interface RedFlag {
  readonly urgency: Urgency;
  readonly sources: readonly Source[];
}

/** The questions before the first set and at every change, each about what is new or getting worse. Any yes stops. The words are the screens'. */
export const RED_FLAGS = {
  'saddle-numbness': { urgency: 'now', sources: [CKS, GIRFT] },
  'bladder-bowel': { urgency: 'now', sources: [CKS, GIRFT] },
  'sexual-sensation': { urgency: 'now', sources: [GIRFT] },
  'both-legs-weak': { urgency: 'now', sources: [CKS, GIRFT] },
  // Weakness of one foot or leg.
  'foot-drop-worse': { urgency: 'same-day', sources: [ONE_LEG] },
  // Also weight lost without trying, and a history of cancer; the ids stay, since they are stored.
  'fever-or-fall': { urgency: 'same-day', sources: [OTHER_CAUSES, EXAMPLES] },
} as const satisfies Readonly<Record<string, RedFlag>>;

export type RedFlagId = keyof typeof RED_FLAGS;

/** In the order in which they are asked. */
export const RED_FLAG_IDS = Object.keys(RED_FLAGS) as readonly RedFlagId[];

/** The same answer to every question. */
export const answeredAll = <A extends string>(answer: A): Readonly<Record<RedFlagId, A>> => ({
  'saddle-numbness': answer,
  'bladder-bowel': answer,
  'sexual-sensation': answer,
  'both-legs-weak': answer,
  'foot-drop-worse': answer,
  'fever-or-fall': answer,
});

/** One round of the questions. */
export interface RedFlagAnswers extends Entry {
  readonly kind: 'red-flags';
  readonly answers: Readonly<Record<RedFlagId, 'yes' | 'no' | NotAnswered>>;
}

/** @param flags at least one */
export const mostUrgent = (flags: readonly RedFlagId[]): Urgency =>
  flags.some((id) => RED_FLAGS[id].urgency === 'now') ? 'now' : 'same-day';
