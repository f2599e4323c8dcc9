/** The longest line, without its end. */
const FOLD_OCTETS = 75;

/** RFC 5545, 3.3.11: what would end a text is written with a backslash. Control characters other than a new line are not allowed at all. */
export const escapedText = (text: string): string =>
  text
    .replaceAll('\\', '\\\\')
    .replaceAll(';', '\\;')
    .replaceAll(',', '\\,')
    .replaceAll(/\r\n|\r|\n/g, '\\n')
    .replaceAll(/(?!\t)\p{Cc}/gu, '');

/** RFC 5545, 3.1: no line is longer than 75 octets without its end; what is longer goes on after CRLF and a space. No character is cut in two. */
export function foldedLine(line: string): string {
  const encoder = new TextEncoder();
  let octets = 0;
  let folded = '';
  for (const character of line) {
    const size = encoder.encode(character).length;
    if (octets + size > FOLD_OCTETS) {
      folded += '\r\n ';
      octets = 1;
    }
    folded += character;
    octets += size;
  }
  return folded;
}

/** The text of a file: every line folded and ended by CRLF. */
export const icalendarText = (lines: readonly string[]): string => lines.map((line) => `${foldedLine(line)}\r\n`).join('');
