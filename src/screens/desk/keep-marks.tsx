import { useState } from 'react';
import { DayProblem } from '../day/day-problem.tsx';
import { entryNow } from '../day/entry-now.ts';
import type { Problem } from '../services.ts';
import { useServices } from '../services-context.tsx';
import { useStillWords } from '../words/still-catalogues.ts';
import { entriesOf } from './mark-entries.ts';
import type { Mark } from './marks.ts';

interface KeepMarksProps {
  readonly marks: readonly Mark[];
  readonly kept: ReadonlySet<string>;
  readonly sessionId: string;
  readonly onKept: (ids: readonly string[]) => void;
}

/** Puts the marks into the diary, on demand: what is kept are angles and notes, no pictures. */
export function KeepMarks({ marks, kept, sessionId, onKept }: KeepMarksProps) {
  const still = useStillWords();
  const services = useServices();
  const [problem, setProblem] = useState<Problem | null>(null);
  const [keeping, setKeeping] = useState(false);
  const measured = marks.filter(({ reading }) => reading);
  const open = measured.filter(({ id }) => !kept.has(id)).length;
  const keep = async () => {
    setKeeping(true);
    const entries = entriesOf(marks, kept, { sessionId, entry: entryNow });
    const added = await services.diary.add(entries);
    setKeeping(false);
    setProblem(added.ok ? null : added.error);
    if (added.ok) onKept(entries.map(({ id }) => id));
  };
  return (
    <div className="keep-marks">
      <DayProblem problem={problem} />
      {open > 0 ? (
        <>
          <p className="soft">{still.keepAbout}</p>
          <button type="button" className="button" data-look="main" disabled={keeping} onClick={() => void keep()}>
            {still.keep(open)}
          </button>
        </>
      ) : null}
      <p role="status">{kept.size > 0 ? still.kept(measured.length - open) : ''}</p>
    </div>
  );
}
