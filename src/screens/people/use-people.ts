import { useEffect, useState } from 'react';
import { localTime } from '../../dose/local-time.ts';
import type { PersonFacts } from '../../dose/person-facts.ts';
import type { PeopleList } from '../../record/people-store.ts';
import type { PersonId } from '../../record/person.ts';
import { clockNow } from '../parts/clock-now.ts';
import type { Problem } from '../services.ts';
import { useServices } from '../services-context.tsx';
import { type PersonLine, personLine } from './people-lines.ts';
import type { PeopleServices } from './people-services.ts';

/** The list moves once for so many people that were worked out, not for each. Chosen. */
const SHOWN_AT_ONCE = 20;

export interface PeopleInUse {
  /** Null while they are read, and when they can't be. */
  readonly lines: readonly PersonLine[] | null;
  readonly damaged: number;
  readonly problem: Problem | null;
}

/** Works out, one after the other, what was written to since the list was last made. */
async function workedOut(
  people: PeopleServices,
  list: PeopleList,
  show: (found: ReadonlyMap<PersonId, PersonFacts>) => void,
  isWanted: () => boolean,
): Promise<Problem | null> {
  const found = new Map<PersonId, PersonFacts>();
  const waiting = list.people.filter(({ facts }) => facts === null);
  for (const [i, { person }] of waiting.entries()) {
    const facts = await people.facts(person.id);
    if (!isWanted()) return null;
    if (!facts.ok) return facts.error;
    found.set(person.id, facts.value);
    if ((i + 1) % SHOWN_AT_ONCE === 0 || i + 1 === waiting.length) show(new Map(found));
  }
  return null;
}

/** Everybody, with what is known of them today; what is not known yet comes later. @param round read anew with each number */
export function usePeople(round: number): PeopleInUse {
  const { people } = useServices();
  const [list, setList] = useState<PeopleList | null>(null);
  const [found, setFound] = useState<ReadonlyMap<PersonId, PersonFacts>>(new Map());
  const [problem, setProblem] = useState<Problem | null>(null);
  // biome-ignore lint/correctness/useExhaustiveDependencies: another round reads the same anew.
  useEffect(() => {
    let wanted = true;
    const read = async () => {
      const listed = await people.list();
      if (!wanted) return;
      if (!listed.ok) return setProblem(listed.error);
      setList(listed.value);
      const failed = await workedOut(people, listed.value, setFound, () => wanted);
      if (failed && wanted) setProblem(failed);
    };
    void read();
    return () => {
      wanted = false;
    };
  }, [people, round]);
  const { day } = localTime(clockNow());
  const lines =
    list?.people.map(({ person, facts }) => personLine({ person, facts: facts ?? found.get(person.id) ?? null }, day)) ?? null;
  return { lines, damaged: list?.damaged.length ?? 0, problem };
}
