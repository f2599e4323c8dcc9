import type { Proposal } from '../../dose/propose.ts';
import type { Words } from '../words/words.ts';

/** Why this is proposed; nothing for a stop, whose reasons stand among the warning signs. */
export function whyIn(proposal: Proposal, { day: { proposal: said } }: Words): string {
  switch (proposal.kind) {
    case 'up':
      return said.good(proposal.goodDays);
    case 'hold':
      return said.hold[proposal.reason.kind];
    case 'back':
    case 'contact':
      return said.flare[proposal.reason.kind];
    case 'stop':
      return '';
    default:
      return proposal satisfies never;
  }
}

/** The reason that a step was stored with; a word that is not known stays as it is. */
export function reasonIn(reason: string, { day, report: { steps } }: Words): string {
  if (reason === 'good-days') return steps.goodDays;
  if (reason === 'chosen') return steps.chosen;
  const flares: Readonly<Record<string, string>> = day.proposal.flare;
  return flares[reason] ?? reason;
}
