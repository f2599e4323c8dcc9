/** What a part stands before that is not in the report yet. */
const NEXT = '## Clip by clip';

/**
 * A report with a part put in, or put in place of the old one of the same heading; everything else stays as it stands.
 * @param part begins with its heading (`## ...`) and ends with a line's end
 */
export function withPart(report: string, part: string): string {
  const heading = part.slice(0, part.indexOf('\n'));
  if (!heading.startsWith('## ')) throw new Error(`withPart requires a part that begins with its heading, got "${heading}"`);
  const old = report.indexOf(`${heading}\n`);
  if (old >= 0) {
    const end = report.indexOf('\n## ', old + heading.length);
    return `${report.slice(0, old)}${part}${end < 0 ? '' : report.slice(end)}`;
  }
  const next = report.indexOf(NEXT);
  if (next < 0) throw new Error(`withPart requires a report with "${NEXT}", got none`);
  return `${report.slice(0, next)}${part}\n${report.slice(next)}`;
}
