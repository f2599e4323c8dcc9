import fc from 'fast-check';
import Papa from 'papaparse';
import { expect, test } from 'vitest';
import { type Cell, csvOf, degCell, msCell } from '../../src/record/csv.ts';

/** One column named `a`, one cell in each row. */
const written = (...cells: readonly Cell[]): string => csvOf([{ name: 'a', cell: (row: Cell) => row }], cells);
const readBack = (csv: string) => Papa.parse<string[]>(csv, { delimiter: ',', newline: '\r\n' });

// RFC 4180, section 2: lines end with CRLF; commas, quotes and line breaks are enclosed in quotes; a quote inside is doubled.
test.each([
  ['a comma', 'x,y', '"x,y"'],
  ['a quote', 'the "good" leg', '"the ""good"" leg"'],
  ['a line break', 'one\r\ntwo', '"one\r\ntwo"'],
  ['a lone line feed', 'one\ntwo', '"one\ntwo"'],
  ['a plain text', 'foot-tap', 'foot-tap'],
  ['a space before', ' x', '" x"'],
  ['letters of any language', 'elevación', 'elevación'],
  ['nothing known', null, ''],
  ['a truth', true, 'true'],
  ['a number', 12.25, '12.25'],
  ['a negative number', -12.5, '-12.5'],
  ['a small number', -0.01, '-0.01'],
] as const)('%s is written as RFC 4180 has it', (_, cell, says) => {
  expect(written(cell)).toBe(`a\r\n${says}`);
});

test.each(['=1+1', '+1', '-1', '@SUM(A1)', '\t=1', '\r=1', '\n=1', '  =1', '=HYPERLINK("http://x";"y")', '=1\n2', '\uFF1D1'])(
  'no text begins a formula: %j',
  (text) => {
    const csv = written(text);
    expect(csv.split('\r\n')[1]?.startsWith('"\'')).toBe(true);
    expect(readBack(csv).data[1]).toEqual([`'${text}`]);
  },
);

test('names are cells too, and columns come in their order', () => {
  const csv = csvOf<readonly [string, number]>(
    [
      { name: 'side', cell: ([side]) => side },
      { name: 'range_deg', cell: ([, range]) => range },
    ],
    [
      ['left', 1.5],
      ['right', -2],
    ],
  );
  expect(csv).toBe('side,range_deg\r\nleft,1.5\r\nright,-2');
});

test('without rows there are the names', () => {
  expect(csvOf([{ name: 'a', cell: () => 1 }], [])).toBe('a');
});

test('whatever the texts, they come back as they were, or with the apostrophe before a formula', () => {
  const text = fc.string({ unit: fc.constantFrom('a', ',', '"', '\r', '\n', '\t', ' ', '=', '+', '-', '@', "'", 'ñ', ';') });
  fc.assert(
    fc.property(fc.array(fc.tuple(text, text), { minLength: 1 }), (rows) => {
      const csv = csvOf<readonly [string, string]>(
        [
          { name: 'one', cell: ([one]) => one },
          { name: 'two', cell: ([, two]) => two },
        ],
        rows,
      );
      const { data, errors } = readBack(csv);
      expect(errors).toEqual([]);
      expect(data).toHaveLength(rows.length + 1);
      for (const [i, row] of rows.entries())
        for (const [j, cell] of row.entries()) {
          const back = data[i + 1]?.[j] ?? '';
          expect([cell, `'${cell}`]).toContain(back);
          expect(back).not.toMatch(/^\s*[=+\-@]/);
        }
    }),
  );
});

test('degrees have two places, milliseconds none; what was not measured stays empty', () => {
  expect([degCell(1.005), degCell(-7.126), degCell(-0.001), degCell(null), degCell(undefined)]).toEqual([
    expect.closeTo(1, 1),
    -7.13,
    0,
    null,
    null,
  ]);
  expect([msCell(2000.5), msCell(null)]).toEqual([2001, null]);
});
