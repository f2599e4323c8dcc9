import { type Dose, sameDose } from '../../dose/dose.ts';
import type { DoseLog } from '../../dose/dose-log.ts';
import { currentDose } from '../../dose/dose-step.ts';
import type { Target } from '../../dose/prescribed-exercise.ts';
import type { Prescription } from '../../dose/prescription.ts';
import type { CalendarDay } from '../../symptoms/calendar-day.ts';
import { prescribedWords } from '../day/prescribed-words.ts';
import type { Words } from '../words/words.ts';
import { useWords } from '../words/words-context.tsx';
import { dateIn } from './date-in.ts';

export const targetIn = (target: Target, { plan, report }: Words): string =>
  target.kind === 'range' ? report.prescribed.range(target.fromDeg, target.toDeg) : plan.targets[target.kind];

export const doseIn = ({ setsADay, repsASet, holdS }: Dose, { plan, day }: Words): string =>
  `${plan.setsADay(setsADay)}, ${day.dose(repsASet, holdS)}`;

interface PrescribedPartProps {
  readonly prescription: Prescription;
  readonly log: DoseLog;
  readonly from: CalendarDay;
  readonly to: CalendarDay;
}

/** What the plan says, at today's dose. */
export function PrescribedPart({ prescription, log, from, to }: PrescribedPartProps) {
  const words = useWords();
  const { report, locale } = words;
  const { prescribed } = report;
  const { by, day, items } = prescription;
  const changes = log.prescriptions.filter((each) => each.revises !== null && each.day >= from && each.day <= to).length;
  return (
    <section>
      <h2>{prescribed.title}</h2>
      <p>
        {prescribed.by[by.role](dateIn(locale, day))} {by.name === '' ? '' : prescribed.byName(by.name)}{' '}
        {changes > 0 ? prescribed.changed(changes) : ''}
      </p>
      <table>
        <thead>
          <tr>
            <th scope="col">{report.exercise}</th>
            <th scope="col">{prescribed.dose}</th>
            <th scope="col" className="report-target">
              {prescribed.target}
            </th>
          </tr>
        </thead>
        <tbody>
          {items.map((item) => {
            const dose = currentDose(prescription, item, log.steps, to);
            return (
              <tr key={item.id}>
                <th scope="row">
                  {prescribedWords(item.exercise, words).plural}, {item.sides.map((side) => report.sides[side]).join(', ')}
                </th>
                <td>
                  {doseIn(dose, words)}; {prescribed.daysAWeek(item.daysAWeek)}; {prescribed.limit(item.symptomLimit)}
                  {sameDose(dose, item.start) ? null : <> ({prescribed.atFirst(doseIn(item.start, words))})</>}
                </td>
                <td className="report-target">{targetIn(item.target, words)}</td>
              </tr>
            );
          })}
        </tbody>
      </table>
    </section>
  );
}
