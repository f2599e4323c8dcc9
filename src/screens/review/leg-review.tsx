import { doneByWeek } from '../../dose/done-by-week.ts';
import { asLinesNow } from '../../dose/lines-now.ts';
import { currentPrescription } from '../../dose/prescription.ts';
import type { LineProgress } from '../../dose/progress.ts';
import { rangeSets } from '../../dose/range-sets.ts';
import { DayChart } from '../chart/day-chart.tsx';
import { DoneStrip } from '../chart/done-strip.tsx';
import type { MarkKind } from '../chart/mark.tsx';
import { ValueTable } from '../chart/value-table.tsx';
import { shortDayIn } from '../day/clock-words.ts';
import { GlideSetsTable } from '../glide/glide-sets-table.tsx';
import { limbsOf } from '../parts/limb-words.ts';
import { whenIn } from '../parts/when.ts';
import { degreesIn } from '../result/degrees.ts';
import { useSeenByWords } from '../words/seen-by-catalogues.ts';
import { useWords } from '../words/words-context.tsx';
import type { Reviewed } from './use-review.ts';

/** With more days than this each cell is a week. Chosen: about where a cell becomes too narrow to be seen. */
const MOST_CELLS = 60;
const HEIGHT = 190;

/** What a set's mark says of its target. */
export const TARGET_MARKS = { below: 'down', within: 'dot', above: 'up' } as const satisfies Record<string, MarkKind>;

/** One leg of one line: what was done, and how far it went in every set. */
export function LegReview({ line, reviewed: { log, from, to } }: { readonly line: LineProgress; readonly reviewed: Reviewed }) {
  const words = useWords();
  const { review, progress, locale } = words;
  const { lines } = review;
  const { item, side, days, setsDue, setsDoneOfDue, daysDone, range } = line;
  const degrees = degreesIn(locale);
  const seenByWords = useSeenByWords();
  const byWeek = days.length > MOST_CELLS;
  const cells = byWeek ? doneByWeek(days) : days;
  const prescription = currentPrescription(log.prescriptions);
  const { done } = prescription ? asLinesNow(log, prescription) : log;
  const sets = rangeSets(
    item,
    side,
    done.filter(({ day }) => day >= from && day <= to),
  );
  const other = range?.otherSide?.ok ? range.otherSide.value.referenceDeg : null;
  const { target } = item;
  return (
    <div className="review-leg">
      <h4>{limbsOf(item.exercise, words)[side].leg}</h4>
      <p>{setsDue > 0 ? progress.done(setsDoneOfDue, setsDue, daysDone) : progress.nothingDue}</p>
      <DoneStrip days={cells} label={byWeek ? lines.doneWeeks : lines.doneDays} />
      {sets.length > 0 ? (
        <DayChart
          days={days.map(({ day }) => day)}
          values={sets.map(({ day, rangeDeg, bandDeg, target: against }) => ({
            day,
            value: rangeDeg,
            band: bandDeg,
            mark: TARGET_MARKS[against ?? 'within'],
          }))}
          target={target.kind === 'range' ? { from: target.fromDeg, to: target.toDeg } : null}
          reference={other === null ? null : { name: `${progress.otherLeg} ${degrees(other)}°`, value: other }}
          scale={{ from: 0, to: 0 }}
          unit="°"
          label={lines.rangeDrawn}
          height={HEIGHT}
        />
      ) : null}
      {range?.mixed ? <p>{seenByWords.mixed[range.seenBy]}</p> : null}
      {sets.length === 0 ? <p className="soft">{lines.notMeasured}</p> : null}
      {sets.length > 0 ? (
        <ValueTable
          summary={lines.setsTable}
          columns={[
            lines.when,
            progress.range,
            lines.reps,
            ...(range?.mixed ? [seenByWords.column] : []),
            ...(target.kind === 'range' ? [lines.againstTarget] : []),
          ]}
          rows={sets.map(({ id, endedAt, rangeDeg, bandDeg, reps, seenBy, target: against }) => ({
            key: id,
            cells: [
              whenIn(locale, endedAt),
              `${degrees(rangeDeg)}° ± ${degrees(bandDeg)}°`,
              reps,
              ...(range?.mixed ? [seenByWords.way[seenBy]] : []),
              ...(against ? [lines.target3[against]] : []),
            ],
          }))}
        />
      ) : null}
      <div className="review-glides">
        <GlideSetsTable sets={line.glides} />
      </div>
      <ValueTable
        summary={byWeek ? lines.weeksTable : lines.daysTable}
        columns={[progress.day, progress.sets]}
        rows={cells.map(({ day, setsDone, setsDue: due }) => ({
          key: day,
          cells: [shortDayIn(locale, day), progress.setsOf(setsDone, due)],
        }))}
      />
    </div>
  );
}
