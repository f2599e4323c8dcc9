import type { Progress } from '../../dose/progress.ts';
import { addDays } from '../../symptoms/calendar-day.ts';
import type { CheckIn } from '../../symptoms/check-in.ts';
import { byMoment } from '../../symptoms/entry.ts';
import { MOST_INTENSITY } from '../../symptoms/felt.ts';
import { symptomShift } from '../../symptoms/symptom-shift.ts';
import { DayChart } from '../chart/day-chart.tsx';
import type { MarkKind } from '../chart/mark.tsx';
import { LEG_MARKS, PlaceChart } from '../chart/place-chart.tsx';
import { ValueTable } from '../chart/value-table.tsx';
import { shortDayIn } from '../day/clock-words.ts';
import { symptomRows } from '../report/symptom-rows.ts';
import { useWords } from '../words/words-context.tsx';
import { ChartKey } from './chart-key.tsx';
import type { Reviewed } from './use-review.ts';

const HEIGHT = 190;
const GUTTER_KEYS = ['left', 'right'] as const;

/** What the next day said of a day of sets, by its mark. */
const MARKS: Readonly<Record<CheckIn['afterwards'], MarkKind>> = {
  'not-answered': 'dot',
  'no-flare': 'dot',
  settled: 'ring',
  'not-settled': 'up',
};

/** What was told about symptoms day by day: how strong, how far down, and what the next day said. */
export function SymptomsReview({
  found,
  reviewed: { log, from, to },
}: {
  readonly found: Progress;
  readonly reviewed: Reviewed;
}) {
  const { review, progress, report, feel, sides, locale } = useWords();
  const { symptoms: words, glance } = review;
  const rows = symptomRows(log, from, to, 1);
  if (rows.length === 0)
    return (
      <section>
        <h2>{words.title}</h2>
        <p>{report.symptoms.none}</p>
      </section>
    );
  const days: (typeof from)[] = [];
  for (let day = from; day <= to; day = addDays(day, 1)) days.push(day);
  const nextDay = new Map(log.checkIns.toSorted(byMoment).map(({ aboutDay, afterwards }) => [aboutDay, afterwards]));
  const placed = found.symptoms.filter(({ places }) => places !== null);
  const shifts = new Map(
    placed.slice(1).map(({ day, places }, i) => {
      const at = (named: typeof places) => ({ intensity: 'not-answered', places: named ?? [] }) as const;
      return [day, symptomShift(at(placed[i]?.places ?? null), at(places)).kind];
    }),
  );
  return (
    <section>
      <h2>{words.title}</h2>
      <div className="review-legs">
        <div className="review-leg">
          <h3>{words.strengthTitle}</h3>
          <DayChart
            days={days}
            values={found.symptoms.flatMap(({ day, most }) =>
              most === null ? [] : [{ day, value: most, band: 0, mark: MARKS[nextDay.get(day) ?? 'not-answered'] }],
            )}
            target={null}
            reference={null}
            scale={{ from: 0, to: MOST_INTENSITY }}
            unit=""
            label={words.strengthDrawn}
            height={HEIGHT}
          />
          <ChartKey
            signs={[
              ['dot', words.marks.told],
              ['ring', words.marks.settled],
              ['up', words.marks['not-settled']],
            ]}
          />
        </div>
        <div className="review-leg">
          <h3>{words.placeTitle}</h3>
          <PlaceChart days={days} symptoms={found.symptoms} names={words.places} label={words.placeDrawn} />
          <ChartKey signs={GUTTER_KEYS.map((side) => [LEG_MARKS[side], sides[side].leg])} />
        </div>
      </div>
      <ValueTable
        summary={words.table}
        columns={[progress.day, report.symptoms.strength, report.symptoms.furthest, words.moved, report.symptoms.nextDay]}
        rows={rows.map(({ from: day, least, most, furthest, afterwards, weaker }) => {
          const shift = shifts.get(day);
          return {
            key: day,
            cells: [
              shortDayIn(locale, day),
              least === null || most === null ? progress.unsaid : report.symptoms.fromTo(least, most),
              furthest ? `${feel.regions[furthest.region]}, ${report.sides[furthest.side]}` : '',
              shift && shift !== 'unknown' ? glance.shift[shift] : '',
              [afterwards && report.symptoms.afterwards[afterwards], weaker && report.symptoms.weaker]
                .filter((each) => each)
                .join(', '),
            ],
          };
        })}
      />
    </section>
  );
}
