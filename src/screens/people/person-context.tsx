import { createContext, useContext } from 'react';
import type { Person } from '../../record/person.ts';
import type { Problem } from '../services.ts';

export interface PersonInUse {
  readonly person: Person;
  /** Writes a change of them. @returns whether it is on the disk */
  readonly change: (part: Partial<Person>) => Promise<boolean>;
  /** Why the last change could not be stored; null when it was. */
  readonly problem: Problem | null;
}

export const PersonContext = createContext<PersonInUse | null>(null);

/** Whose screens these are; null: one's own. */
export const usePerson = (): PersonInUse | null => useContext(PersonContext);

/** Where "back" leads from a screen to which the person's own page has a way: there, else to where one came from with one's own. */
export const useBack = (own: string): string => (usePerson() ? '/' : own);
