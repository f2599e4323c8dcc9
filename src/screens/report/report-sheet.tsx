import type { DoseLog } from '../../dose/dose-log.ts';
import type { Prescription } from '../../dose/prescription.ts';
import type { Progress } from '../../dose/progress.ts';
import { Wordmark } from '../parts/wordmark.tsx';
import { usePerson } from '../people/person-context.tsx';
import { useWords } from '../words/words-context.tsx';
import { ChecksPart } from './checks-part.tsx';
import { dateIn } from './date-in.ts';
import { DonePart } from './done-part.tsx';
import { isInvented } from './is-invented.ts';
import { MarksPart } from './marks-part.tsx';
import { MeasuredPart } from './measured-part.tsx';
import { PrescribedPart } from './prescribed-part.tsx';
import { SafetyPart } from './safety-part.tsx';
import { StepsPart } from './steps-part.tsx';
import { SymptomsPart } from './symptoms-part.tsx';

interface ReportSheetProps {
  readonly log: DoseLog;
  readonly prescription: Prescription;
  readonly found: Progress;
  readonly weeks: number;
}

/** What is printed: one report, two pages at most for two weeks of a usual plan. */
export function ReportSheet({ log, prescription, found, weeks }: ReportSheetProps) {
  const { report, people, locale } = useWords();
  const person = usePerson()?.person;
  const days = { from: found.from, to: found.to };
  return (
    <article className="report">
      <header className="report-head">
        <Wordmark />
        <p>
          <strong>
            {report.title}, {report.period(dateIn(locale, found.from), dateIn(locale, found.to))}
          </strong>
        </p>
        <p>{report.madeOn(dateIn(locale, found.to))}</p>
        <p className="report-name">
          {report.name}
          {person ? ` ${person.name}` : null}
          {person?.affectedSide ? `, ${people.affected[person.affectedSide]}` : null}
        </p>
      </header>
      {isInvented(log, found.from) ? <p className="report-invented">{report.invented}</p> : null}
      <PrescribedPart prescription={prescription} log={log} {...days} />
      <DonePart lines={found.lines} />
      <MarksPart marks={log.angleMarks} {...days} />
      <MeasuredPart lines={found.lines} />
      <SymptomsPart found={found} log={log} weeks={weeks} />
      <ChecksPart selfChecks={log.selfChecks} {...days} />
      <SafetyPart log={log} {...days} />
      <StepsPart prescription={prescription} log={log} {...days} />
      <p className="report-standing">{report.standing}</p>
    </article>
  );
}
