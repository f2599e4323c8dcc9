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
const icalendarText = (lines: readonly string[]): string => lines.map((line) => `${foldedLine(line)}\r\n`).join('');

/** A moment as RFC 5545, 3.3.5 writes it, in UTC. @param moment ISO 8601, UTC */
export const utcStamp = (moment: string): string => moment.replaceAll(/[-:]|\.\d+/g, '');

/** A calendar of these events. @param product what it holds, for the programs that ask who wrote it */
export const calendarText = (product: string, events: readonly (readonly string[])[]): string =>
  icalendarText([
    'BEGIN:VCALENDAR',
    'VERSION:2.0',
    `PRODID:-//Evenside//${product}//EN`,
    'CALSCALE:GREGORIAN',
    ...events.flat(),
    'END:VCALENDAR',
  ]);
