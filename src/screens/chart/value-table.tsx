import type { ReactNode } from 'react';
import { shownCell } from '../parts/figure.tsx';
import './value-table.css';

interface ValueTableProps {
  /** What unfolds it. */
  readonly summary: string;
  /** What its columns mean, where that has to be said. */
  readonly note?: string;
  /** The heads of its columns; the first names the rows. */
  readonly columns: readonly string[];
  readonly rows: readonly { readonly key: string; readonly cells: readonly ReactNode[] }[];
}

/** Every value of a chart as a table, folded away for those who see the chart. */
export function ValueTable({ summary, note, columns, rows }: ValueTableProps) {
  return (
    <details className="value-table">
      <summary>{summary}</summary>
      {note === undefined ? null : <p className="soft small">{note}</p>}
      <PlainTable columns={columns} rows={rows} />
    </details>
  );
}

/** With more columns than this a narrow screen shows each row as a block. Chosen. */
const MOST_BESIDE = 3;

/** A table whose first column names its rows. */
export function PlainTable({ columns, rows }: Pick<ValueTableProps, 'columns' | 'rows'>) {
  return (
    <table className="plain-table" data-wide={columns.length > MOST_BESIDE}>
      <thead>
        <tr>
          {columns.map((column) => (
            <th key={column} scope="col">
              {column}
            </th>
          ))}
        </tr>
      </thead>
      <tbody className="numbers">
        {rows.map(({ key, cells: [name, ...cells] }) => (
          <tr key={key}>
            <th scope="row">{name}</th>
            {cells.map((cell, i) => (
              <td key={columns[i + 1]} data-label={columns[i + 1]}>
                {shownCell(cell)}
              </td>
            ))}
          </tr>
        ))}
      </tbody>
    </table>
  );
}
