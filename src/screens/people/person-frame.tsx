import { type ReactNode, useEffect, useMemo, useState } from 'react';
import type { Person, PersonId } from '../../record/person.ts';
import { fail } from '../../result.ts';
import { DayProblem } from '../day/day-problem.tsx';
import { Page } from '../parts/page.tsx';
import type { Problem } from '../services.ts';
import { ServicesContext, useServices } from '../services-context.tsx';
import { RunContext } from '../set/run-context.tsx';
import { useSounds } from '../set/sounds-context.tsx';
import { useOwnRun } from '../set/use-own-run.ts';
import { useWords } from '../words/words-context.tsx';
import { PersonContext } from './person-context.tsx';

/** All inside is of one person: their sets and diary are read and written, and a set that runs is theirs. */
export function PersonFrame({ id, children }: { readonly id: PersonId; readonly children: ReactNode }) {
  const outer = useServices();
  const sounds = useSounds();
  const words = useWords();
  const [person, setPerson] = useState<Person | null>(null);
  const [problem, setProblem] = useState<Problem | null>(null);
  const services = useMemo(() => outer.of(id), [outer, id]);
  const run = useOwnRun(services, sounds);
  useEffect(() => {
    let wanted = true;
    outer.people.read(id).then((read) => {
      if (!wanted) return;
      if (read.ok) setPerson(read.value);
      else setProblem(read.error);
    });
    return () => {
      wanted = false;
    };
  }, [outer, id]);
  const inUse = useMemo(
    () =>
      person && {
        person,
        problem,
        change: async (part: Partial<Person>) => {
          // Another tab may have changed somebody meanwhile: nothing of that is written over.
          const now = await outer.people.read(id);
          const clash = now.ok && (Object.keys(part) as (keyof Person)[]).some((key) => now.value[key] !== person[key]);
          const changed = { ...(now.ok ? now.value : person), ...part, changedAt: new Date().toISOString() };
          const saved = clash ? fail<Problem>({ kind: 'changed-elsewhere' }) : now.ok ? await outer.people.save(changed) : now;
          setProblem(saved.ok ? null : saved.error);
          if (saved.ok) setPerson(changed);
          return saved.ok;
        },
      },
    [person, problem, outer, id],
  );
  if (!inUse) {
    return (
      <Page className="person" title={words.people.title} back="~/people">
        {problem ? <DayProblem problem={problem} /> : <p>{words.app.loading}</p>}
      </Page>
    );
  }
  return (
    <PersonContext value={inUse}>
      <ServicesContext value={services}>
        <RunContext value={run}>{children}</RunContext>
      </ServicesContext>
    </PersonContext>
  );
}
