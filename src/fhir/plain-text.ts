/** Longest text of a FHIR element that we write, characters. Chosen: far above what a screen takes; the whole record has all of it. */
const LONGEST = 4000;

/**
 * A text as FHIR's `string` allows it: no control characters but tab and line breaks, no blanks but the plain one, no half of a
 * surrogate pair, not empty, no blanks around it.
 * Undefined when nothing is left.
 */
export function plainText(text: string): string | undefined {
  const allowed = text.replace(/(?![\t\n\r])[\p{Cc}\s]/gu, ' ').replace(/\p{Cs}/gu, '\ufffd');
  const kept = [...allowed.trim()].slice(0, LONGEST).join('').trim();
  return kept === '' ? undefined : kept;
}

/** Years of four digits, as FHIR's dateTime has them. */
const FOUR_DIGITS = /^(?!0000)\d{4}-/;

/** A moment (ms since 1970, or ISO 8601 in UTC) as FHIR's dateTime and instant; undefined when FHIR can't write it. */
export function fhirMoment(moment: string | number): string | undefined {
  const time = new Date(moment);
  if (Number.isNaN(time.getTime())) return undefined;
  const text = time.toISOString();
  return FOUR_DIGITS.test(text) ? text : undefined;
}
