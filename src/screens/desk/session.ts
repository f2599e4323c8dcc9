import { type Dispatch, type SetStateAction, useEffect, useState } from 'react';
import { newId } from '../../record/new-id.ts';
import { usePerson } from '../people/person-context.tsx';
import type { AppServices } from '../services.ts';
import { useServices } from '../services-context.tsx';
import type { Mark } from './marks.ts';

/** The marks that are taken together, from the first until they are cleared. */
export interface Session {
  readonly id: string;
  readonly marks: readonly Mark[];
  /** Ids of those that are in the diary. */
  readonly kept: ReadonlySet<string>;
}

export const freshSession = (): Session => ({ id: newId(), marks: [], kept: new Set() });

/** Marks that are in no diary yet, by whose they are. */
const unkept = new WeakMap<AppServices, Session>();

/**
 * The session of whose screens these are. Who leaves a person's desk with marks that are not kept finds them again; a reload forgets them.
 * Outside of a record it is not known who is measured next: each visit begins anew.
 */
export function useSession(): readonly [Session, Dispatch<SetStateAction<Session>>] {
  const services = useServices();
  const isOfPerson = usePerson() !== null;
  const [session, setSession] = useState(() => (isOfPerson && unkept.get(services)) || freshSession());
  useEffect(() => {
    const isOpen = session.marks.some(({ id, reading }) => reading && !session.kept.has(id));
    if (isOpen && isOfPerson) unkept.set(services, session);
    else unkept.delete(services);
  }, [services, isOfPerson, session]);
  return [session, setSession];
}
