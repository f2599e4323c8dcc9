import { useState } from 'react';
import { Link } from 'wouter';
import { localTime } from '../../dose/local-time.ts';
import { DayProblem } from '../day/day-problem.tsx';
import { clockNow } from '../parts/clock-now.ts';
import { saveFile } from '../parts/save-file.ts';
import type { Problem } from '../services.ts';
import { useServices } from '../services-context.tsx';
import { useStoredWords } from '../words/stored-catalogues.ts';
import { useWords } from '../words/words-context.tsx';

/** One's own sets and diary as one file, and where those of others are saved. */
export function SaveAll() {
  const { files } = useStoredWords();
  const { report } = useWords();
  const { everything } = useServices();
  const [problem, setProblem] = useState<Problem | null>(null);
  const [damaged, setDamaged] = useState(0);
  const save = async () => {
    const all = await everything();
    setProblem(all.ok ? null : all.error);
    if (!all.ok) return;
    setDamaged(all.value.damaged.length);
    const { exportFile } = await import('../../record/export-file.ts');
    const text = JSON.stringify(exportFile(all.value, new Date().toISOString(), null));
    saveFile(`evenside-everything-${localTime(clockNow()).day}.json`, text, 'application/json');
  };
  return (
    <section>
      <h2>{files.title}</h2>
      <p>{files.about}</p>
      <button type="button" className="button" onClick={() => void save()}>
        {files.save}
      </button>
      <DayProblem problem={problem} />
      {damaged > 0 ? <p role="status">{report.damaged(damaged)}</p> : null}
      <p>
        {files.people} <Link href="/people">{files.openPeople}</Link>
      </p>
    </section>
  );
}
