import type { ReactNode } from 'react';
import type { Side } from '../../pose/landmarks.ts';
import { useWords } from '../words/words-context.tsx';

const SIDES = ['left', 'right'] as const;

/** What one row says, and of each leg. */
export interface LegRow {
  readonly key: string;
  readonly name: string;
  readonly cell: (side: Side) => ReactNode;
}

/** A table with a column for each leg. @param first what its rows are named by */
export function LegTable({
  first,
  rows,
  className,
}: {
  readonly first: string;
  readonly rows: readonly LegRow[];
  readonly className?: string;
}) {
  const { sides } = useWords();
  return (
    <table className={className}>
      <thead>
        <tr>
          <th scope="col">{first}</th>
          {SIDES.map((side) => (
            <th key={side} scope="col">
              {sides[side].leg}
            </th>
          ))}
        </tr>
      </thead>
      <tbody className="numbers">
        {rows.map(({ key, name, cell }) => (
          <tr key={key}>
            <th scope="row">{name}</th>
            {SIDES.map((side) => (
              <td key={side}>{cell(side)}</td>
            ))}
          </tr>
        ))}
      </tbody>
    </table>
  );
}
