import { legGroups } from '../../dose/leg-groups.ts';
import type { LineProgress } from '../../dose/progress.ts';
import { prescribedWords } from '../day/prescribed-words.ts';
import { useWords } from '../words/words-context.tsx';
import { LegTable } from './leg-table.tsx';

/** What was done of what was due, one row for each exercise, a column for each leg. */
export function DonePart({ lines }: { readonly lines: readonly LineProgress[] }) {
  const words = useWords();
  const { report } = words;
  const { done } = report;
  const groups = legGroups([...new Set(lines.map(({ item }) => item))]);
  const cell = (line: LineProgress | undefined): string => {
    if (!line) return '';
    const sets = done.sets(line.setsDoneOfDue, line.setsDue);
    if (line.daysDone === 0) return sets;
    const reps = line.days.reduce((sum, day) => sum + day.reps, 0);
    return `${sets}; ${done.days(line.daysDone)}; ${done.reps(reps)}`;
  };
  return (
    <section>
      <h2>{done.title}</h2>
      <LegTable
        first={report.exercise}
        rows={groups.flatMap((group) => {
          const [first] = group;
          if (!first) return [];
          return {
            key: first.id,
            name: prescribedWords(first.exercise, words).plural,
            cell: (side) => cell(lines.find((line) => group.includes(line.item) && line.side === side)),
          };
        })}
      />
    </section>
  );
}
