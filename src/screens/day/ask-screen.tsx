import { Redirect } from 'wouter';
import type { DoseLog } from '../../dose/dose-log.ts';
import type { Today } from '../../dose/today.ts';
import { useWords } from '../words/words-context.tsx';
import { lineOf } from './line-of.ts';
import { useDay } from './use-day.ts';

/** Whether it was told how it feels for this line since its last set, or any other of its line. */
function isTold({ reports, done }: DoseLog, itemId: string): boolean {
  const told = reports.filter((r) => r.moment === 'before-set' && r.itemId === itemId).map(({ at }) => at);
  const last = done.filter((set) => set.itemId === itemId).map(({ endedAt }) => endedAt);
  return (told.toSorted().at(-1) ?? '') > (last.toSorted().at(-1) ?? '');
}

/** Where the way into a set leads first: open questions, then the set. */
function firstStep(today: Today, log: DoseLog, itemId: string, side: string): string {
  if (today.gate.kind === 'stopped' || !lineOf(today, itemId, side)) return '/today';
  if (today.questions.length > 0) return `/questions/${itemId}/${side}`;
  return isTold(log, itemId) ? `/today/go/${itemId}/${side}` : `/feel/before/${itemId}/${side}`;
}

/** Sends on to what comes first before a set. */
export function AskScreen({ itemId, side }: { readonly itemId: string; readonly side: string }) {
  const { app } = useWords();
  const { log, today, problem } = useDay();
  if (today && log) return <Redirect to={firstStep(today, log, itemId, side)} replace />;
  if (log || problem) return <Redirect to="/today" replace />;
  return <p className="heard">{app.loading}</p>;
}
