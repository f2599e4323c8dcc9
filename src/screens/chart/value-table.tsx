import type { ReactNode } from 'react';
import './value-table.css';

interface ValueTableProps {
  /** What unfolds it. */
  readonly summary: string;
  /** The heads of its columns; the first names the rows. */
  readonly columns: readonly string[];
  readonly rows: readonly { readonly key: string; readonly cells: readonly ReactNode[] }[];
}

/** Every value of a chart as a table, folded away for those who see the chart. */
export function ValueTable({ summary, columns, rows }: ValueTableProps) {
  return (
    <details className="value-table">
      <summary>{summary}</summary>
      <PlainTable columns={columns} rows={rows} />
    </details>
  );
}

/** A table whose first column names its rows. */
export function PlainTable({ columns, rows }: Pick<ValueTableProps, 'columns' | 'rows'>) {
  return (
    <table className="plain-table">
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
              <td key={columns[i + 1]}>{cell}</td>
            ))}
          </tr>
        ))}
      </tbody>
    </table>
  );
}
