import type { LineProgress } from '../../dose/progress.ts';
import { prescribedWords } from '../day/prescribed-words.ts';
import { RangeChart } from '../progress/range-chart.tsx';
import { useWords } from '../words/words-context.tsx';
import { rangeLines } from './range-lines.ts';

/** How far each measured leg went: drawn, and in sentences. */
export function MeasuredPart({ lines }: { readonly lines: readonly LineProgress[] }) {
  const words = useWords();
  const { report, sides, locale } = words;
  const { measured } = report;
  const ranged = lines.flatMap(({ item, side, days, range }) => (range ? [{ item, side, days, range }] : []));
  return (
    <section>
      <h2>{measured.title}</h2>
      {ranged.length === 0 ? (
        <p>{measured.none}</p>
      ) : (
        <p className="report-fine">
          {measured.method} {ranged.some(({ item }) => item.exercise === 'toe-lift') ? `${measured.toeMethod} ` : ''}
          {measured.key} {measured.errors}
        </p>
      )}
      <div className="report-charts">
        {ranged.map(({ item, side, days, range }) => (
          <div key={`${item.id} ${side}`} className="report-chart">
            <h3>
              {prescribedWords(item.exercise, words).plural}, {sides[side].legLower}
            </h3>
            <RangeChart range={range} target={item.target} days={days.map(({ day }) => day)} height={CHART_HEIGHT} />
            <p>{rangeLines(range, item.target, report, locale).join(' ')}</p>
          </div>
        ))}
      </div>
    </section>
  );
}

/** Low enough for eight of them on two pages, px. Chosen. */
export const CHART_HEIGHT = 96;
