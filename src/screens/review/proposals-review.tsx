import { useMemo } from 'react';
import { currentPrescription } from '../../dose/prescription.ts';
import { type PastProposal, proposalHistory } from '../../dose/proposal-history.ts';
import { type Proposal, propose } from '../../dose/propose.ts';
import { PlainTable, ValueTable } from '../chart/value-table.tsx';
import { changeWords } from '../day/change-words.ts';
import { shortDayIn } from '../day/clock-words.ts';
import { lineName } from '../day/line-name.ts';
import { reasonIn, whyIn } from '../report/proposal-words.ts';
import type { Words } from '../words/words.ts';
import { useWords } from '../words/words-context.tsx';
import type { Reviewed } from './use-review.ts';

/** What was proposed, with the change. */
function proposedIn(proposal: Proposal, { report, day }: Words): string {
  const kind = report.steps.kinds[proposal.kind];
  return 'to' in proposal ? `${kind}: ${changeWords(proposal.from, proposal.to, day)}` : kind;
}

function outcomeIn({ answer }: PastProposal, words: Words): string {
  const { proposals } = words.review;
  if (!('step' in answer)) return proposals.answer[answer.kind]('');
  const { from, to, reason } = answer.step;
  const why = answer.kind === 'chosen' && reason !== 'chosen' ? ` ${reasonIn(reason, words)}` : '';
  return `${proposals.answer[answer.kind](changeWords(from, to, words.day))}${why}`;
}

/** Whether something was to be done, or was done. */
const isNews = ({ proposal, answer }: PastProposal): boolean => proposal.kind !== 'hold' || 'step' in answer;

/** What the rule proposed line by line, what came of it, and what it proposes now. */
export function ProposalsReview({ reviewed: { log, from, to } }: { readonly reviewed: Reviewed }) {
  const words = useWords();
  const { review, locale } = words;
  const { proposals: said } = review;
  const history = useMemo(() => proposalHistory(log, from, to), [log, from, to]);
  const prescription = currentPrescription(log.prescriptions);
  const items = [...new Map(history.map(({ item }) => [item.id, item])).values()];
  const daysIn = ({ firstDay, lastDay }: PastProposal) =>
    firstDay === lastDay ? shortDayIn(locale, firstDay) : `${shortDayIn(locale, firstDay)} – ${shortDayIn(locale, lastDay)}`;
  const columns = [said.days, said.proposed, said.why, said.outcome];
  const rowsOf = (past: readonly PastProposal[]) =>
    past.toReversed().map((each, i) => ({
      key: `${each.firstDay} ${i}`,
      cells: [daysIn(each), proposedIn(each.proposal, words), whyIn(each.proposal, words), outcomeIn(each, words)],
    }));
  return (
    <section>
      <h2>{said.title}</h2>
      <p className="soft">{said.replayed}</p>
      {items.map((item) => {
        const own = history.filter((each) => each.item.id === item.id);
        const news = own.filter(isNews);
        const held = prescription?.items.find(({ id }) => id === item.id);
        const now = prescription && held ? propose(prescription, held, log, to) : null;
        return (
          <div key={item.id} className="review-item">
            <h3>{lineName(item, items, words)}</h3>
            {now ? (
              <p>
                <strong>
                  {said.now}: {proposedIn(now, words)}.
                </strong>{' '}
                {whyIn(now, words)}
              </p>
            ) : null}
            {news.length === 0 ? <p>{said.noChange}</p> : <PlainTable columns={columns} rows={rowsOf(news)} />}
            {own.length > news.length ? (
              <ValueTable summary={said.everyDay(own.length)} columns={columns} rows={rowsOf(own)} />
            ) : null}
          </div>
        );
      })}
    </section>
  );
}
