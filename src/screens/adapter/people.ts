import type { PersonError } from '../../record/people-store.ts';
import type { Store } from '../../record/store.ts';
import type { StoreError } from '../../record/store-error.ts';
import { fail, ok, type Result } from '../../result.ts';
import { clockNow } from '../parts/clock-now.ts';
import type { PeopleServices } from '../people/people-services.ts';
import type { Problem } from '../services.ts';
import { problemOf } from './problem-of.ts';

const problemOfPerson = (error: PersonError | { readonly kind: 'set-running'; readonly id: string }): Problem =>
  error.kind === 'person-missing' ? { kind: error.kind } : problemOf(error);

/** The people as the screens ask for them. */
export function peopleServices(opening: Promise<Result<Store, StoreError>>): PeopleServices {
  const asked = async <T>(
    call: (store: Store) => Promise<Result<T, Parameters<typeof problemOfPerson>[0]>>,
  ): Promise<Result<T, Problem>> => {
    const store = await opening;
    if (!store.ok) return fail(problemOf(store.error));
    const answer = await call(store.value);
    return answer.ok ? answer : fail(problemOfPerson(answer.error));
  };
  const done = async (answer: Promise<Result<void, Problem>>): Promise<Result<null, Problem>> => {
    const outcome = await answer;
    return outcome.ok ? ok(null) : outcome;
  };
  return {
    list: () => asked((store) => store.people.list()),
    read: (id) => asked((store) => store.people.read(id)),
    save: (person) => done(asked((store) => store.people.save(person))),
    facts: (id) => asked((store) => store.people.facts(id, clockNow().timeZone)),
    remove: (id) => done(asked((store) => store.people.remove(id))),
  };
}
