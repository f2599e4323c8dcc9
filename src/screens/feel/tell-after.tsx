import { Link } from 'wouter';
import { useDay } from '../day/use-day.ts';
import type { ShownSet } from '../services.ts';
import { useWords } from '../words/words-context.tsx';

/** The way to telling how it feels after a set of the plan; nothing when it is told, or when the set is none of the plan. */
export function TellAfter({ set }: { readonly set: ShownSet }) {
  const { feel } = useWords();
  const { log } = useDay();
  const done = log?.done.find(({ id }) => id === set.id);
  if (!log || !done?.itemId || log.reports.some((r) => r.moment === 'after-set' && r.setId === set.id)) return null;
  return (
    <Link href={`/feel/after/${set.id}`} className="button" data-look="main">
      {feel.afterCard}
    </Link>
  );
}
