import { useEffect, useState } from 'react';
import type { Result } from '../../result.ts';
import type { Problem, StoredSets } from '../services.ts';
import { useServices } from '../services-context.tsx';

/** The stored sets, newest first; null while they are read. */
export function useStoredSets(): Result<StoredSets, Problem> | null {
  const services = useServices();
  const [sets, setSets] = useState<Result<StoredSets, Problem> | null>(null);
  useEffect(() => {
    let wanted = true;
    services.sets().then((read) => {
      if (wanted) setSets(read);
    });
    return () => {
      wanted = false;
    };
  }, [services]);
  return sets;
}
