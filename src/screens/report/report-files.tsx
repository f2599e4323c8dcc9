import { useState } from 'react';
import { Link } from 'wouter';
import type { Person } from '../../record/person.ts';
import type { CalendarDay } from '../../symptoms/calendar-day.ts';
import { DayProblem } from '../day/day-problem.tsx';
import { timeZoneHere } from '../parts/clock-now.ts';
import { saveFile } from '../parts/save-file.ts';
import { usePerson } from '../people/person-context.tsx';
import { useRecordWords } from '../record/use-record-words.ts';
import type { Everything, Problem } from '../services.ts';
import { useServices } from '../services-context.tsx';
import { useWords } from '../words/words-context.tsx';

/** What makes each file is loaded with the first one. */
const FILES = {
  setsFile: {
    name: (day: CalendarDay) => `evenside-sets-${day}.csv`,
    type: 'text/csv;charset=utf-8',
    make: async ({ sets, diary }: Everything) =>
      (await import('../../record/sets-table.ts')).setsTable(sets, diary, timeZoneHere()),
  },
  repsFile: {
    name: (day: CalendarDay) => `evenside-repetitions-${day}.csv`,
    type: 'text/csv;charset=utf-8',
    make: async ({ sets, diary }: Everything) =>
      (await import('../../record/reps-table.ts')).repsTable(sets, diary, timeZoneHere()),
  },
  everythingFile: {
    name: (day: CalendarDay) => `evenside-everything-${day}.json`,
    type: 'application/json',
    make: async (all: Everything, person: Person | null) =>
      JSON.stringify((await import('../../record/export-file.ts')).exportFile(all, new Date().toISOString(), person)),
  },
} as const;
type FileKind = keyof typeof FILES;

/** Saves what is stored of one person as files. @param day stands in their names */
export function ReportFiles({ day }: { readonly day: CalendarDay }) {
  const { report, people } = useWords();
  const { send, bring } = useRecordWords();
  const { everything } = useServices();
  const person = usePerson()?.person ?? null;
  const [problem, setProblem] = useState<Problem | null>(null);
  const [damaged, setDamaged] = useState(0);
  const save = async (kind: FileKind) => {
    const all = await everything();
    setProblem(all.ok ? null : all.error);
    if (!all.ok) return;
    setDamaged(all.value.damaged.length);
    const { name, type, make } = FILES[kind];
    saveFile(name(day), await make(all.value, person), type);
  };
  return (
    <div className="report-files">
      <div className="report-buttons">
        {(['setsFile', 'repsFile', 'everythingFile'] as const).map((kind) => (
          <button key={kind} type="button" className="button" onClick={() => void save(kind)}>
            {report[kind]}
          </button>
        ))}
      </div>
      <div className="report-buttons">
        <Link href="/send" className="button">
          {send.open[person ? 'person' : 'self']}
        </Link>
        <Link href="/bring" className="button">
          {bring.open[person ? 'person' : 'self'].name}
        </Link>
      </div>
      <p className="soft small">{person ? people.person.filesHint : report.filesHint}</p>
      <DayProblem problem={problem} />
      {damaged > 0 ? <p role="status">{report.damaged(damaged)}</p> : null}
    </div>
  );
}
