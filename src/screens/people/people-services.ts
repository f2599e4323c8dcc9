import type { PersonFacts } from '../../dose/person-facts.ts';
import type { PeopleList } from '../../record/people-store.ts';
import type { Person, PersonId } from '../../record/person.ts';
import type { Result } from '../../result.ts';
import type { Problem } from '../problem.ts';

/** The people whom a therapist looks after on this machine. */
export interface PeopleServices {
  /** Everybody, in no order, without looking at a single set. */
  readonly list: () => Promise<Result<PeopleList, Problem>>;
  readonly read: (id: PersonId) => Promise<Result<Person, Problem>>;
  readonly save: (person: Person) => Promise<Result<null, Problem>>;
  /** Works out what the list says of somebody of whom something was written since. */
  readonly facts: (id: PersonId) => Promise<Result<PersonFacts, Problem>>;
  /** Removes somebody with all their sets and their diary. */
  readonly remove: (id: PersonId) => Promise<Result<null, Problem>>;
}
