import type { DoseStep } from '../../dose/dose-step.ts';
import type { PrescribedExercise } from '../../dose/prescribed-exercise.ts';
import type { Prescription } from '../../dose/prescription.ts';
import type { Proposal } from '../../dose/propose.ts';
import type { DiaryEntry } from '../../record/diary-entry.ts';
import { useWords } from '../words/words-context.tsx';
import { changeWords } from './change-words.ts';
import { entryNow } from './entry-now.ts';
import { lineName } from './line-name.ts';

interface ProposalCardProps {
  readonly proposal: Proposal;
  readonly prescription: Prescription;
  readonly item: PrescribedExercise;
  readonly add: (entries: readonly DiaryEntry[]) => Promise<boolean>;
}

/** The step that taking a proposal on makes; null when it changes nothing. */
function stepOf(proposal: Proposal, prescription: Prescription, item: PrescribedExercise): DoseStep | null {
  if (proposal.kind !== 'up' && proposal.kind !== 'back') return null;
  const { kind: direction, from, to, aboutDay } = proposal;
  const reason = proposal.kind === 'up' ? 'good-days' : proposal.reason.kind;
  return {
    ...entryNow(prescription.origin),
    kind: 'dose-step',
    prescriptionId: prescription.id,
    itemId: item.id,
    direction,
    from,
    to,
    aboutDay,
    reason,
    by: 'rule',
  };
}

/** What to do next with one line, why, and the choice. Nothing when all stays as it is for want of news. */
export function ProposalCard({ proposal, prescription, item, add }: ProposalCardProps) {
  const words = useWords();
  const { proposal: said } = words.day;
  if (proposal.kind === 'hold' || proposal.kind === 'stop') return null;
  const step = stepOf(proposal, prescription, item);
  const why = proposal.kind === 'up' ? said.good(proposal.goodDays) : said.flare[proposal.reason.kind];
  return (
    <li className="day-proposal" data-kind={proposal.kind}>
      <h2>
        {lineName(item, prescription.items, words)}: {said.kind[proposal.kind]}
      </h2>
      {step ? <p>{changeWords(step.from, step.to, words.day)}</p> : <p>{said.contact}</p>}
      <p className="soft">{why}</p>
      {step ? (
        <div className="day-actions">
          <button type="button" className="button" onClick={() => void add([step])}>
            {said.take}
          </button>
        </div>
      ) : null}
    </li>
  );
}
