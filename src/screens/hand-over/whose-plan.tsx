import { useEffect, useState } from 'react';
import { useLocation } from 'wouter';
import type { Person } from '../../record/person.ts';
import { Notice } from '../parts/notice.tsx';
import { useServices } from '../services-context.tsx';
import { useWords } from '../words/words-context.tsx';

/** The people of a therapist's list, by name; none where there is no list. A list that cannot be read offers nobody. */
export function useListed(): readonly Person[] {
  const { people } = useServices();
  const { locale } = useWords();
  const [listed, setListed] = useState<readonly Person[]>([]);
  useEffect(() => {
    let stale = false;
    void people.list().then((found) => {
      if (stale || !found.ok) return;
      setListed(found.value.people.map(({ person }) => person).toSorted((a, b) => a.name.localeCompare(b.name, locale)));
    });
    return () => {
      stale = true;
    };
  }, [people, locale]);
  return listed;
}

/** A therapist has opened a link: it would go into their own record, so that of one of their people is offered. @param code of the plan */
export function WhosePlan({ people, code }: { readonly people: readonly Person[]; readonly code: string }) {
  const { whose } = useWords().handOver.take;
  const [, navigate] = useLocation();
  const [id, setId] = useState(people[0]?.id ?? '');
  return (
    <Notice icon="person" look="caution" title={whose.title}>
      <p>{whose.todo}</p>
      <form
        className="take-paste"
        onSubmit={(event) => {
          event.preventDefault();
          navigate(`/person/${id}/take/${code}`);
        }}
      >
        <label>
          {whose.person}
          <select value={id} onChange={({ target }) => setId(target.value)}>
            {people.map((person) => (
              <option key={person.id} value={person.id}>
                {person.name}
              </option>
            ))}
          </select>
        </label>
        <button type="submit" className="button">
          {whose.open}
        </button>
      </form>
    </Notice>
  );
}
