import type { RepEdit } from './rep-edit.ts';

/** The last moment that is written with four digits of the year, so that moments still compare as texts. */
const LAST_MS = Date.parse('9999-12-31T23:59:59.999Z');

/**
 * An edit as it is written after others of its set: at a moment after all of theirs, if need be a millisecond after, so that it holds last everywhere although
 * this machine's clock is behind another's or was set back. After the end of the year 9999 it stays as it is.
 */
export function writtenAfter(edit: RepEdit, known: readonly RepEdit[]): RepEdit {
  const last = known.reduce<string | null>((latest, { at }) => (latest === null || at > latest ? at : latest), null);
  if (last === null || edit.at > last) return edit;
  const next = Date.parse(last) + 1;
  return next > LAST_MS ? edit : { ...edit, at: new Date(next).toISOString() };
}
