import type { EditedRep } from '../../record/rep-edit.ts';
import { deg } from '../../units.ts';
import { Icon } from '../parts/icon.tsx';
import type { Change } from '../services.ts';
import { useWords } from '../words/words-context.tsx';
import { RepRow } from './rep-row.tsx';
import './rep-table.css';

interface RepTableProps {
  readonly reps: readonly EditedRep[];
  readonly onChange: (change: Change) => void;
}

/** Every repetition in numbers, each to be struck out or put back, and a way to add a missed one. */
export function RepTable({ reps, onChange }: RepTableProps) {
  const { result } = useWords();
  const { columns } = result;
  // Room for the error of the widest one.
  const widestDeg = deg(
    reps.reduce((most, r) => (r.kind === 'measured' ? Math.max(most, r.rep.rangeDeg + r.rep.uncertaintyDeg) : most), 1),
  );
  return (
    <section className="reps" aria-labelledby="reps-title">
      <h2 id="reps-title">{result.repsTitle}</h2>
      <p className="soft">{result.repsHint}</p>
      {reps.length > 0 ? (
        <table>
          <thead>
            <tr className="reps-columns">
              <th scope="col">{columns.number}</th>
              <th scope="col">{columns.range}</th>
              <th scope="col" className="rep-time">
                {columns.time}
              </th>
              <th scope="col">{columns.state}</th>
              <th scope="col">
                <span className="heard">{columns.change}</span>
              </th>
            </tr>
          </thead>
          <tbody>
            {reps.map((rep, i) => (
              <RepRow
                key={rep.ref.kind === 'measured' ? rep.ref.number : rep.ref.id}
                rep={rep}
                number={rep.ref.kind === 'measured' ? rep.ref.number : i + 1}
                widestDeg={widestDeg}
                onChange={onChange}
              />
            ))}
          </tbody>
        </table>
      ) : null}
      <button type="button" className="button" onClick={() => onChange({ kind: 'add' })}>
        <Icon name="plus" />
        {result.addMissed}
      </button>
    </section>
  );
}
