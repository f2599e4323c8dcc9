import type { DoseLog } from '../../dose/dose-log.ts';
import type { DoseStep } from '../../dose/dose-step.ts';
import type { Prescription } from '../../dose/prescription.ts';
import { propose } from '../../dose/propose.ts';
import type { CalendarDay } from '../../symptoms/calendar-day.ts';
import { byMoment } from '../../symptoms/entry.ts';
import { changeWords } from '../day/change-words.ts';
import { shortDayIn } from '../day/clock-words.ts';
import { prescribedWords } from '../day/prescribed-words.ts';
import type { Words } from '../words/words.ts';
import { useWords } from '../words/words-context.tsx';
import { reasonIn, whyIn } from './proposal-words.ts';

const lineName = (step: DoseStep, log: DoseLog, words: Words): string => {
  const item = log.prescriptions.find(({ id }) => id === step.prescriptionId)?.items.find(({ id }) => id === step.itemId);
  return item ? `${prescribedWords(item.exercise, words).plural}: ` : '';
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
                  {prescribedWords(item.exercise, words).plural}: {steps.kinds[proposal.kind]}
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
                {shortDayIn(words.locale, step.day)}, {lineName(step, log, words)}
                {changeWords(step.from, step.to, words.day)} ({steps.by[step.by]}). {reasonIn(step.reason, words)}
              </li>
            ))}
          </ul>
        </div>
      </div>
    </section>
  );
}
