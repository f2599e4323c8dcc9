/**
 * Comma-separated values read strictly as RFC 4180, section 2, has them; written from the text of it, so that what writes is not checked by itself.
 * @returns the cells of each line
 * @throws Error with the place where the grammar is left
 */
export function rfc4180(csv: string): readonly (readonly string[])[] {
  const lines: string[][] = [[]];
  let at = 0;
  const fault = (what: string) => new Error(`${what} at character ${at}: ${JSON.stringify(csv.slice(at, at + 30))}`);
  const enclosed = (): string => {
    let cell = '';
    at += 1;
    for (;;) {
      const end = csv.indexOf('"', at);
      if (end === -1) throw fault('quotes that do not end');
      cell += csv.slice(at, end);
      at = end + 1;
      if (csv[at] !== '"') return cell;
      cell += '"';
      at += 1;
    }
  };
  const bare = (): string => {
    const [cell = ''] = /^[^",\r\n]*/.exec(csv.slice(at, at + 100_000)) ?? [];
    at += cell.length;
    return cell;
  };
  for (;;) {
    lines.at(-1)?.push(csv[at] === '"' ? enclosed() : bare());
    if (at === csv.length) return lines;
    if (csv[at] === ',') at += 1;
    else if (csv.startsWith('\r\n', at)) {
      at += 2;
      lines.push([]);
    } else throw fault('neither a comma nor the end of a line');
  }
}
