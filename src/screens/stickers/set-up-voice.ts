import { type Ms, ms } from '../../units.ts';
import type { StickerVoiceWords } from '../words/sticker-words.ts';
import type { SetUpState } from './set-up-state.ts';

/** What is told aloud while somebody's hands are at the foot. */
export type SpokenSign = keyof StickerVoiceWords['signs'];

/** Said once it has stood this long, so that a flicker is not. Chosen. */
const STANDS_MS = ms(1000);

/**
 * The one thing to be told now. Nothing while stickers are tapped: whoever taps looks at the screen and reads.
 * @param armed the set is to begin by itself, so the foot has to be still
 */
export function signOf({ mode, start, refusal, checks, unseen }: SetUpState, armed: boolean): SpokenSign | null {
  if (!start) return mode === 'find' ? (refusal ?? 'searching') : null;
  if (checks.seen === 'bad') return unseen === null || unseen === 'lost' ? 'gone' : unseen;
  if (checks.light === 'bad') return 'dark';
  if (checks.large === 'bad') return 'too-small';
  if (refusal === 'glare') return 'glare';
  if (checks.seen === 'unknown') return null;
  return armed && checks.still === 'bad' ? 'moves' : 'good';
}

/** What stands now and since when, and what was said last. */
export interface SetUpVoice {
  readonly sign: SpokenSign | null;
  readonly sinceMs: Ms;
  readonly said: SpokenSign | null;
}

export const SILENT: SetUpVoice = { sign: null, sinceMs: ms(0), said: 'searching' };

/** Follows the sign; tells when to say it: once it has stood, and never twice running. */
export function hearSign(
  state: SetUpVoice,
  sign: SpokenSign | null,
  nowMs: Ms,
): { readonly state: SetUpVoice; readonly say: SpokenSign | null } {
  if (sign !== state.sign) return { state: { ...state, sign, sinceMs: nowMs }, say: null };
  if (sign === null || sign === state.said || nowMs - state.sinceMs < STANDS_MS) return { state, say: null };
  return { state: { ...state, said: sign }, say: sign };
}

/** How long all has to be right before a set begins by itself, ms. Chosen: time to hear it and to take the hands away. */
export const BEGINS_AFTER_MS = ms(3000);

/** Whether a set that is to begin by itself may: all is right, and the foot is still. */
export const isAllRight = ({ start, checks }: Pick<SetUpState, 'start' | 'checks'>): boolean =>
  start !== null && Object.values(checks).every((check) => check === 'good');
