import { useEffect } from 'react';
import { usePerson } from '../people/person-context.tsx';
import { useServices } from '../services-context.tsx';
import type { PlanDraft } from './plan-draft.ts';

/** Drafts that were changed and not saved, by person, for as long as the page is open. */
const KEPT = new WeakMap<object, Map<string, PlanDraft>>();
const OWN = '';

/** A changed plan that waits for its editor to be opened again. */
export interface KeptDraft {
  /** @param revises the plan that holds now; a draft of an older one is not offered */
  readonly of: (revises: string | null) => PlanDraft | null;
  readonly keep: (draft: PlanDraft) => void;
  readonly drop: () => void;
}

/** The unsaved draft of whoever's plan this is: going back does not throw it away. */
export function useKeptDraft(): KeptDraft {
  const services = useServices();
  const key = usePerson()?.person.id ?? OWN;
  const drafts = KEPT.get(services) ?? new Map<string, PlanDraft>();
  KEPT.set(services, drafts);
  return {
    of: (revises) => {
      const draft = drafts.get(key);
      return draft && (draft.revised?.id ?? null) === revises ? draft : null;
    },
    keep: (draft) => drafts.set(key, draft),
    drop: () => drafts.delete(key),
  };
}

/** The browser asks before it closes the page while something is not saved. */
export function useAskedBeforeClosing(unsaved: boolean): void {
  useEffect(() => {
    if (!unsaved) return;
    const ask = (event: BeforeUnloadEvent) => event.preventDefault();
    addEventListener('beforeunload', ask);
    return () => removeEventListener('beforeunload', ask);
  }, [unsaved]);
}
