import { useCallback, useEffect, useState } from 'react';
import type { Change, Problem, ShownSet } from '../services.ts';
import { useServices } from '../services-context.tsx';

export interface StoredSetInUse {
  /** Null while it is read, and when it can't be. */
  readonly set: ShownSet | null;
  readonly problem: Problem | null;
  readonly change: (change: Change) => Promise<void>;
  /** Takes the set as it is now that it is on the disk. */
  readonly onStored: (set: ShownSet) => void;
}

/** A stored set by its id, and its changes by hand. A change that could not be stored leaves the set as it is and says why. */
export function useStoredSet(id: string): StoredSetInUse {
  const services = useServices();
  const [set, setSet] = useState<ShownSet | null>(null);
  const [problem, setProblem] = useState<Problem | null>(null);
  useEffect(() => {
    let wanted = true;
    services.set(id).then((read) => {
      if (!wanted) return;
      if (read.ok) setSet(read.value);
      else setProblem(read.error);
    });
    return () => {
      wanted = false;
    };
  }, [services, id]);
  const change = useCallback(
    async (wish: Change) => {
      const changed = await services.change(id, wish);
      if (changed.ok) setSet(changed.value);
      setProblem(changed.ok ? null : changed.error);
    },
    [services, id],
  );
  return { set, problem, change, onStored: setSet };
}
