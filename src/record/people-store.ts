import type { PersonFacts } from '../dose/person-facts.ts';
import type { Result } from '../result.ts';
import type { Person, PersonId } from './person.ts';
import type { StoreError } from './store-error.ts';

/** One line of the list. */
export interface ListedPerson {
  readonly person: Person;
  /** Null: something was written since they were worked out; `facts` does it again. */
  readonly facts: PersonFacts | null;
}

export interface PeopleList {
  /** In no order. */
  readonly people: readonly ListedPerson[];
  /** People who can't be read. They stay as they are. */
  readonly damaged: readonly { readonly id: string; readonly what: string }[];
}

export type PersonError = StoreError | { readonly kind: 'person-missing'; readonly id: PersonId };

/** The people on this machine. Every call is one transaction: it happened wholly or not at all. */
export interface PeopleStore {
  /** Everybody, without looking at a single set. */
  readonly list: () => Promise<Result<PeopleList, StoreError>>;
  readonly read: (id: PersonId) => Promise<Result<Person, PersonError>>;
  /** Adds somebody, or replaces what stands there of them. */
  readonly save: (person: Person) => Promise<Result<void, StoreError>>;
  /**
   * Works the facts of somebody out of their diary and sets, and keeps them.
   * @param timeZone IANA name; on which day a measured set was done when no link says so
   */
  readonly facts: (id: PersonId, timeZone: string) => Promise<Result<PersonFacts, StoreError>>;
  /** Removes somebody with all their sets and their diary; not while one of their sets runs. */
  readonly remove: (id: PersonId) => Promise<Result<void, PersonError | { readonly kind: 'set-running'; readonly id: string }>>;
}
