import { useState } from 'react';
import { progress } from '../../dose/progress.ts';
import { OptionCards } from '../choose/option-cards.tsx';
import { DayProblem } from '../day/day-problem.tsx';
import { useDay } from '../day/use-day.ts';
import { Page } from '../parts/page.tsx';
import { useBack, usePerson } from '../people/person-context.tsx';
import { WEEKS, type Weeks } from '../progress/weeks.ts';
import { useWords } from '../words/words-context.tsx';
import { FhirFile } from './fhir-file.tsx';
import { ReportFiles } from './report-files.tsx';
import { ReportSheet } from './report-sheet.tsx';
import '../styles/paper.css';
import './report-screen.css';

/** The report for the therapist, to be printed, and what is on this machine as files. */
export function ReportScreen() {
  const back = useBack('/progress');
  const { report, progress: progressWords, app, people } = useWords();
  const lead = usePerson() ? people.person.reportLead : report.lead;
  const { log, today, day, problem } = useDay();
  const [weeks, setWeeks] = useState<Weeks>('2');
  const found = log && progress(log, day, 7 * Number(weeks));
  return (
    <Page className="report-page" title={report.title} lead={lead} back={back}>
      <div className="report-tools">
        <DayProblem problem={problem} />
        {!log && !problem ? <p className="heard">{app.loading}</p> : null}
        {found ? (
          <>
            <OptionCards
              legend={progressWords.lookBack}
              name="weeks"
              options={WEEKS.map((value) => ({ value, name: progressWords.weeks(Number(value)) }))}
              chosen={weeks}
              onChoose={setWeeks}
            />
            <div className="report-buttons">
              <button type="button" className="button" data-look="main" onClick={() => window.print()}>
                {report.print}
              </button>
            </div>
          </>
        ) : null}
        {log && !found ? <p>{report.none}</p> : null}
        <ReportFiles day={day} />
        <FhirFile day={day} weeks={Number(weeks)} />
      </div>
      {log && today && found ? (
        <ReportSheet log={log} prescription={today.prescription} found={found} weeks={Number(weeks)} />
      ) : null}
    </Page>
  );
}
