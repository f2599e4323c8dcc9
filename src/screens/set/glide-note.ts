import type { GlideTrouble, SetEvent } from '../../measure/live-view.ts';
import type { GlideStop } from '../../measure/set-result.ts';
import { type Ms, ms } from '../../units.ts';
import type { Words } from '../words/words.ts';

/** The one sentence about a glide that stands on the screen for a while. */
export interface GlideNote {
  readonly what: 'wrong' | GlideTrouble;
  readonly sinceMs: Ms;
}

/** How long it stands, ms. Chosen: read twice from afar, over before the next two cycles could be told. */
const STANDS_MS = ms(8000);

type EndedWhy = Extract<SetEvent, { kind: 'ended' }>['why'];

/** Whether a set of glides had to end before it was done: then it is told why, and what to do. @param why null: it has not ended by itself */
export const hadToEnd = (why: EndedWhy | null): why is GlideStop => why === 'above-limit' || why === 'symptoms';

/** Whether it has stood long enough. */
export const isNoteOver = ({ sinceMs }: GlideNote, nowMs: Ms): boolean => nowMs - sinceMs >= STANDS_MS;

export const noteWords = ({ what }: Pick<GlideNote, 'what'>, words: Words['set']): string =>
  what === 'wrong' ? words.glideWrong : words.glideTrouble[what];
