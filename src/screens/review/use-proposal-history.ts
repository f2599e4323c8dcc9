import { useEffect, useState } from 'react';
import { type PastProposal, proposalsDayByDay } from '../../dose/proposal-history.ts';
import type { Reviewed } from './use-review.ts';

/** So long at a time, ms, so that the page answers meanwhile. Chosen: less than a person feels. */
const TURN_MS = 30;

/** What was proposed over the period, found out while the page is looked at; null until it is known. */
export function useProposalHistory({ log, from, to }: Reviewed): readonly PastProposal[] | null {
  const [history, setHistory] = useState<readonly PastProposal[] | null>(null);
  useEffect(() => {
    setHistory(null);
    const days = proposalsDayByDay(log, from, to);
    let timer = 0;
    const turn = () => {
      const endMs = performance.now() + TURN_MS;
      do {
        const day = days.next();
        if (day.done) return setHistory(day.value);
      } while (performance.now() < endMs);
      timer = window.setTimeout(turn);
    };
    timer = window.setTimeout(turn);
    return () => clearTimeout(timer);
  }, [log, from, to]);
  return history;
}
