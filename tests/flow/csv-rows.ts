import { readFileSync } from 'node:fs';

/** Rows of a file of tests/vectors as records by column name; lines that start with # are notes. */
export function csvRows(name: string): readonly Readonly<Record<string, string>>[] {
  const text = readFileSync(new URL(`../vectors/${name}`, import.meta.url), 'utf8');
  const [header, ...lines] = text.split('\n').filter((line) => line !== '' && !line.startsWith('#'));
  if (header === undefined) throw new Error(`csvRows requires a header line, got none in ${name}`);
  const columns = header.split(',');
  return lines.map((line) => {
    const cells = line.split(',');
    return Object.fromEntries(columns.map((column, i) => [column, cells[i] ?? '']));
  });
}
