import { Link } from 'wouter';
import { useDay } from '../day/use-day.ts';
import type { ShownSet } from '../services.ts';
import { useWords } from '../words/words-context.tsx';

/** Whether it is still to be told how it feels after a set of the plan: not when the set is none of it. Null until that is known. */
export function useToldAfter(set: ShownSet): boolean | null {
  const { log, problem } = useDay();
  if (!log) return problem ? true : null;
  const done = log.done.find(({ id }) => id === set.id);
  return !done?.itemId || log.reports.some((r) => r.moment === 'after-set' && r.setId === set.id);
}

/** The way to telling how it feels after a set. */
export function TellAfter({ set }: { readonly set: ShownSet }) {
  const { feel } = useWords();
  return (
    <Link href={`/feel/after/${set.id}`} className="button" data-look="main">
      {feel.afterCard}
    </Link>
  );
}
