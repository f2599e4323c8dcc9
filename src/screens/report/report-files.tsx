import { useState } from 'react';
import { Link } from 'wouter';
import type { Person } from '../../record/person.ts';
import type { CalendarSet } from '../../record/sets-calendar.ts';
import type { CalendarDay } from '../../symptoms/calendar-day.ts';
import { DayProblem } from '../day/day-problem.tsx';
import { prescribedWords } from '../day/prescribed-words.ts';
import { timeZoneHere } from '../parts/clock-now.ts';
import { saveFile } from '../parts/save-file.ts';
import { usePerson } from '../people/person-context.tsx';
import { useRecordWords } from '../record/use-record-words.ts';
import { ServerLink } from '../server/server-link.tsx';
import type { Everything, Problem } from '../services.ts';
import { useServices } from '../services-context.tsx';
import type { Words } from '../words/words.ts';
import { useWords } from '../words/words-context.tsx';

/** What a done set is called in a calendar: "Foot taps, left leg: 15". */
function calendarWords({ exercise, side, reps }: CalendarSet, words: Words): string {
  const name = typeof exercise === 'string' ? prescribedWords(exercise, words).plural : exercise.ownName;
  return words.day.reminder(name, words.sides[side].legLower, reps);
}

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
  calendarFile: {
    name: (day: CalendarDay) => `evenside-done-${day}.ics`,
    type: 'text/calendar',
    make: async ({ sets, diary }: Everything, _: Person | null, words: Words) => {
      const { calendarSets, setsCalendar } = await import('../../record/sets-calendar.ts');
      return setsCalendar(calendarSets(sets, diary), (set) => calendarWords(set, words), new Date().toISOString());
    },
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
  const words = useWords();
  const { report, people } = words;
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
    saveFile(name(day), await make(all.value, person, words), type);
  };
  return (
    <div className="report-files">
      <div className="report-buttons">
        {(['setsFile', 'repsFile', 'calendarFile', 'everythingFile'] as const).map((kind) => (
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
        <ServerLink look="button" />
      </div>
      <p className="soft small">{person ? people.person.filesHint : report.filesHint}</p>
      <DayProblem problem={problem} />
      {damaged > 0 ? <p role="status">{report.damaged(damaged)}</p> : null}
    </div>
  );
}
