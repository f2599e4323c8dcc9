import { type Ms, ms } from '../../units.ts';

/** What was last said, and when. */
export interface Caption {
  readonly text: string;
  readonly sinceMs: Ms;
}

/** A caption stands at least this long, ms. Chosen: it is seen from three metres by somebody who is moving. */
export const LEAST_MS = 4000;

/**
 * And this long for each word, ms. Chosen: twice the third of a second a word that subtitles for the deaf are timed by (160 to 180 words a minute, the BBC's
 * subtitle guidelines, from memory).
 */
export const EACH_WORD_MS = 700;

/** How long a sentence stands on the screen, ms. */
export const captionMs = (text: string): number => Math.max(LEAST_MS, EACH_WORD_MS * text.split(/\s+/).length);

/** Whether it has stood long enough. */
export const isCaptionOver = ({ text, sinceMs }: Caption, nowMs: Ms): boolean => nowMs - sinceMs >= ms(captionMs(text));

/** Whether it is to be written at all: a count alone stands on the screen as the count. */
export const isCaptioned = (text: string): boolean => /\p{L}/u.test(text);

/** What of a caption does not stand on the screen already. @param shown the sentence that stands there @returns empty: all of it does */
export function captionBeside(text: string, shown: string): string {
  if (shown.includes(text)) return '';
  const rest = text.replace(shown, '').trim();
  return isCaptioned(rest) ? rest : '';
}
