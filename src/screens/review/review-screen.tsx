import { useMemo, useState } from 'react';
import { concernsIn } from '../../dose/concerns.ts';
import { progress } from '../../dose/progress.ts';
import { daysBetween } from '../../symptoms/calendar-day.ts';
import { OptionCards } from '../choose/option-cards.tsx';
import { dayIn } from '../day/clock-words.ts';
import { DayProblem } from '../day/day-problem.tsx';
import { Page } from '../parts/page.tsx';
import { useBack } from '../people/person-context.tsx';
import { isInvented } from '../report/is-invented.ts';
import { useWords } from '../words/words-context.tsx';
import { AttentionPart } from './attention-part.tsx';
import { ChecksReview } from './checks-review.tsx';
import { GlanceTable } from './glance-table.tsx';
import { GlanceTiles } from './glance-tiles.tsx';
import { LinesPart } from './lines-part.tsx';
import { MarksReview } from './marks-review.tsx';
import { PERIODS, type Period } from './period.ts';
import { ProposalsReview } from './proposals-review.tsx';
import { SetsReview } from './sets-review.tsx';
import { SymptomsReview } from './symptoms-review.tsx';
import '../styles/paper.css';
import './review-screen.css';
import { type Reviewed, useReview } from './use-review.ts';

function Parts({ reviewed }: { readonly reviewed: Reviewed }) {
  const { review, report } = useWords();
  const { log, from, to } = reviewed;
  const found = useMemo(() => progress(log, to, daysBetween(from, to) + 1), [log, from, to]);
  const first = useMemo(() => concernsIn(log, from, to), [log, from, to]);
  return (
    <>
      {isInvented(log, from) ? <p className="report-invented">{report.invented}</p> : null}
      <AttentionPart found={first} lines={found?.lines ?? []} />
      {found ? (
        <section>
          <h2>{review.glance.title}</h2>
          <GlanceTiles found={found} reviewed={reviewed} />
          <GlanceTable lines={found.lines} reviewed={reviewed} />
          <p className="soft small">{review.glance.errors}</p>
        </section>
      ) : (
        <p>{review.none}</p>
      )}
      {found ? <LinesPart lines={found.lines} reviewed={reviewed} /> : null}
      {found ? <SymptomsReview found={found} reviewed={reviewed} /> : null}
      {found ? <ProposalsReview reviewed={reviewed} /> : null}
      <ChecksReview reviewed={reviewed} />
      <MarksReview reviewed={reviewed} />
      <SetsReview reviewed={reviewed} />
    </>
  );
}

/** Everything about one person's weeks for the therapist: what to look at first, better or worse, and down to every set. */
export function ReviewScreen() {
  const back = useBack('/progress');
  const { review, progress: progressWords, report, app, locale } = useWords();
  const [period, setPeriod] = useState<Period>('2');
  const { reviewed, problem } = useReview(period);
  return (
    <Page
      className="review"
      title={review.title}
      lead={reviewed ? progressWords.lead(dayIn(locale, reviewed.from), dayIn(locale, reviewed.to)) : undefined}
      back={back}
    >
      <div className="review-tools">
        <OptionCards
          legend={progressWords.lookBack}
          name="period"
          options={PERIODS.map((value) => ({
            value,
            name: value === 'all' ? review.all : progressWords.weeks(Number(value)),
          }))}
          chosen={period}
          onChoose={setPeriod}
        />
        <button type="button" className="button" onClick={() => window.print()}>
          {report.print}
        </button>
      </div>
      <div className="review-parts" aria-busy={reviewed?.period !== period}>
        <DayProblem problem={problem} />
        {!reviewed && !problem ? <p className="heard">{app.loading}</p> : null}
        {reviewed ? <Parts reviewed={reviewed} /> : null}
      </div>
    </Page>
  );
}
