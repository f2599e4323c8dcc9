import Papa from 'papaparse';

/** What stands in one cell. Null is an empty cell: not measured, or not known. */
export type Cell = string | number | boolean | null;

/** One column: its name, with the unit where it has one, and what stands in it. */
export interface Column<Row> {
  readonly name: string;
  readonly cell: (row: Row) => Cell;
}

/**
 * A text that a spreadsheet would take for a formula: one that begins, after spaces if any, with one of these signs, in their wide forms too, or with a
 * tab or a line break. Numbers are no texts. Our own expression, since papaparse's (5.7.1) lets a text through that goes on after a line break.
 */
const FORMULA = /^(?:\s*[=+\-@\uFF1D\uFF0B\uFF0D\uFF20]|[\t\r\n])/;

/**
 * Comma-separated values by RFC 4180: a line of names, CRLF between lines and none after the last, quotes where a cell needs them. Numbers with a point
 * whatever the language. A text that a spreadsheet would take for a formula has an apostrophe before it.
 */
export const csvOf = <Row>(columns: readonly Column<Row>[], rows: readonly Row[]): string =>
  // The names go as a row like any other: told apart, papaparse adds an empty row where there are no others.
  Papa.unparse([columns.map(({ name }) => name), ...rows.map((row) => columns.map(({ cell }) => cell(row)))] as Cell[][], {
    delimiter: ',',
    newline: '\r\n',
    escapeFormulae: FORMULA,
  });

/** A number to so many decimal places; null stays null. */
export function roundedTo(value: number | null | undefined, places: number): number | null {
  if (value === null || value === undefined) return null;
  const scaled = value * 10 ** places;
  // One so large that it has no places; a file from elsewhere may hold it. Adding zero makes -0 a 0.
  return Number.isFinite(scaled) ? Math.round(scaled) / 10 ** places + 0 : value;
}

/** Degrees to two places, as in the result's format; null stays null. */
export const degCell = (value: number | null | undefined): number | null => roundedTo(value, 2);

/** Whole milliseconds; null stays null. */
export const msCell = (value: number | null | undefined): number | null => roundedTo(value, 0);

/** A share or a chance, 0 to 1, to three places; null stays null. */
export const shareCell = (value: number | null): number | null => roundedTo(value, 3);
