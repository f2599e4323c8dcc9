import { Redirect } from 'wouter';
import type { Today } from '../../dose/today.ts';
import { useWords } from '../words/words-context.tsx';
import { lineOf } from './line-of.ts';
import { useDay } from './use-day.ts';

/** Where the way into a set leads first: open questions, then the set. */
function firstStep(today: Today, itemId: string, side: string): string {
  if (today.gate.kind === 'stopped' || !lineOf(today, itemId, side)) return '/today';
  return today.questions.length > 0 ? `/questions/${itemId}/${side}` : `/today/go/${itemId}/${side}`;
}

/** Sends on to what comes first before a set. */
export function AskScreen({ itemId, side }: { readonly itemId: string; readonly side: string }) {
  const { app } = useWords();
  const { log, today, problem } = useDay();
  if (today) return <Redirect to={firstStep(today, itemId, side)} replace />;
  if (log || problem) return <Redirect to="/today" replace />;
  return <p className="heard">{app.loading}</p>;
}
