import type { DoseLog } from '../../dose/dose-log.ts';
import type { DoseStep } from '../../dose/dose-step.ts';
import { legGroups } from '../../dose/leg-groups.ts';
import type { PrescribedExercise } from '../../dose/prescribed-exercise.ts';
import type { Prescription } from '../../dose/prescription.ts';
import { propose } from '../../dose/propose.ts';
import type { CalendarDay } from '../../symptoms/calendar-day.ts';
import { byMoment } from '../../symptoms/entry.ts';
import { changeWords } from '../day/change-words.ts';
import { shortDayIn } from '../day/clock-words.ts';
import { lineName } from '../day/line-name.ts';
import { prescribedWords } from '../day/prescribed-words.ts';
import type { Words } from '../words/words.ts';
import { useWords } from '../words/words-context.tsx';
import { reasonIn, whyIn } from './proposal-words.ts';

const steppedLine = (step: DoseStep, log: DoseLog, words: Words): string => {
  const items = log.prescriptions.find(({ id }) => id === step.prescriptionId)?.items ?? [];
  const item = items.find(({ id }) => id === step.itemId);
  return item ? `${lineName(item, items, words)}: ` : '';
};

/** What is proposed for the lines of one exercise: of each leg, and why, each reason once. @param group as `legGroups` makes it */
function proposedIn(
  group: readonly PrescribedExercise[],
  prescription: Prescription,
  log: DoseLog,
  to: CalendarDay,
  words: Words,
): string {
  const { steps, sides } = words.report;
  const told = group.map((item) => {
    const proposal = propose(prescription, item, log, to);
    const change = 'to' in proposal ? ` (${changeWords(proposal.from, proposal.to, words.day)})` : '';
    const legs = group.length > 1 ? `${item.sides.map((side) => sides[side]).join(', ')}: ` : '';
    return { said: `${legs}${steps.kinds[proposal.kind]}${change}`, why: whyIn(proposal, words) };
  });
  const name = group[0] ? prescribedWords(group[0].exercise, words).plural : '';
  const reasons = [...new Set(told.map(({ why }) => why))];
  if (reasons.length > 1) return `${name}: ${told.map(({ said, why }) => `${said}. ${why}`).join(' ')}`;
  return `${name}: ${told.map(({ said }) => said).join('; ')}. ${reasons.join('')}`;
}

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
            {legGroups(prescription.items).map((group) => (
              <li key={group[0]?.id}>{proposedIn(group, prescription, log, to, words)}</li>
            ))}
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
