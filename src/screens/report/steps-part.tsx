import type { DoseLog } from '../../dose/dose-log.ts';
import type { DoseStep } from '../../dose/dose-step.ts';
import type { Prescription } from '../../dose/prescription.ts';
import { type Proposal, propose } from '../../dose/propose.ts';
import type { CalendarDay } from '../../symptoms/calendar-day.ts';
import { byMoment } from '../../symptoms/entry.ts';
import { changeWords } from '../day/change-words.ts';
import { shortDayIn } from '../day/clock-words.ts';
import { lineName } from '../day/line-name.ts';
import type { Words } from '../words/words.ts';
import { useWords } from '../words/words-context.tsx';

/** Why this is proposed; nothing for a stop, whose reasons stand among the warning signs. */
function whyIn(proposal: Proposal, { day: { proposal: said } }: Words): string {
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
function reasonIn(reason: string, { day, report: { steps } }: Words): string {
  if (reason === 'good-days') return steps.goodDays;
  if (reason === 'chosen') return steps.chosen;
  const flares: Readonly<Record<string, string>> = day.proposal.flare;
  return flares[reason] ?? reason;
}

const steppedLine = (step: DoseStep, log: DoseLog, words: Words): string => {
  const items = log.prescriptions.find(({ id }) => id === step.prescriptionId)?.items ?? [];
  const item = items.find(({ id }) => id === step.itemId);
  return item ? `${lineName(item, items, words)}: ` : '';
};

interface StepsPartProps {
  readonly prescription: Prescription;
  readonly log: DoseLog;
  readonly from: CalendarDay;
  readonly to: CalendarDay;
}

/** What the rule proposes now, and which steps were taken. */
export function StepsPart({ prescription, log, from, to }: StepsPartProps) {
  const words = useWords();
  const { steps } = words.report;
  const taken = log.steps.filter(({ day }) => day >= from && day <= to).toSorted(byMoment);
  return (
    <section>
      <h2>{steps.title}</h2>
      <div className="report-charts">
        <div>
          <h3>{steps.proposed}</h3>
          <ul>
            {prescription.items.map((item) => {
              const proposal = propose(prescription, item, log, to);
              const change = 'to' in proposal ? ` (${changeWords(proposal.from, proposal.to, words.day)})` : '';
              return (
                <li key={item.id}>
                  {lineName(item, prescription.items, words)}: {steps.kinds[proposal.kind]}
                  {change}. {whyIn(proposal, words)}
                </li>
              );
            })}
          </ul>
        </div>
        <div>
          <h3>{steps.taken}</h3>
          {taken.length === 0 ? <p>{steps.noneTaken}</p> : null}
          <ul>
            {taken.map((step) => (
              <li key={step.id}>
                {shortDayIn(words.locale, step.day)}, {steppedLine(step, log, words)}
                {changeWords(step.from, step.to, words.day)} ({steps.by[step.by]}). {reasonIn(step.reason, words)}
              </li>
            ))}
          </ul>
        </div>
      </div>
    </section>
  );
}
