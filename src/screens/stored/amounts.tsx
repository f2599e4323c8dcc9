import { useEffect, useState } from 'react';
import { useStore } from 'zustand';
import type { StoredRows } from '../../record/stored-rows.ts';
import type { Result } from '../../result.ts';
import { DayProblem } from '../day/day-problem.tsx';
import { site } from '../offline/site-here.ts';
import type { Problem } from '../services.ts';
import { useServices } from '../services-context.tsx';
import { useStoredWords } from '../words/stored-catalogues.ts';
import { useWords } from '../words/words-context.tsx';
import { byteSize } from './byte-size.ts';
import type { KeptProgram, Room } from './here-services.ts';

interface Seen {
  readonly rows: Result<StoredRows, Problem>;
  readonly program: KeptProgram;
  readonly room: Room | null;
}

/** How much is stored, kind by kind. */
export function Amounts() {
  const { amounts } = useStoredWords();
  const { locale, choose } = useWords();
  const { here } = useServices();
  const readiness = useStore(site.state, (s) => s.readiness);
  const [seen, setSeen] = useState<Seen | null>(null);
  // Looked at again when what is kept for the time without a network has changed.
  // biome-ignore lint/correctness/useExhaustiveDependencies: readiness is what changes it
  useEffect(() => {
    let current = true;
    Promise.all([here.rows(), here.program(), here.room()]).then(([rows, program, room]) => {
      if (current) setSeen({ rows, program, room });
    });
    return () => {
      current = false;
    };
  }, [here, readiness]);
  const size = (bytes: number) => byteSize(locale, bytes);
  const whole = new Intl.NumberFormat(locale);
  const lines: (readonly [string, number | null, number])[] = [];
  if (seen?.rows.ok) {
    const { sets, diary, people } = seen.rows.value;
    lines.push([amounts.sets, sets.count, sets.bytes], [amounts.diary, diary.count, diary.bytes]);
    lines.push([amounts.people, people.count, people.bytes]);
  }
  for (const { model, bytes } of seen?.program.models ?? []) lines.push([amounts.model(choose.models[model].name), null, bytes]);
  if (seen && seen.program.site > 0) lines.push([amounts.program, null, seen.program.site]);
  return (
    <section>
      <h2 id="amounts">{amounts.title}</h2>
      {seen ? (
        <>
          <DayProblem problem={seen.rows.ok ? null : seen.rows.error} />
          <table className="amounts" aria-labelledby="amounts">
            <thead>
              <tr>
                <th scope="col">{amounts.kind}</th>
                <th scope="col" className="numbers">
                  {amounts.count}
                </th>
                <th scope="col" className="numbers">
                  {amounts.size}
                </th>
              </tr>
            </thead>
            <tbody>
              {lines.map(([name, count, bytes]) => (
                <tr key={name}>
                  <th scope="row">{name}</th>
                  <td className="numbers">{count === null ? '' : whole.format(count)}</td>
                  <td className="numbers">{size(bytes)}</td>
                </tr>
              ))}
            </tbody>
          </table>
          <p className="soft">
            {amounts.about} {seen.room ? amounts.room(size(seen.room.used), size(seen.room.given)) : null}
          </p>
        </>
      ) : (
        <p role="status">{amounts.looking}</p>
      )}
    </section>
  );
}
