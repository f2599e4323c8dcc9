import type { LineProgress } from '../../dose/progress.ts';
import { prescribedWords } from '../day/prescribed-words.ts';
import { glidesTold } from '../glide/glide-told.ts';
import { limbsOf } from '../parts/limb-words.ts';
import { RangeChart } from '../progress/range-chart.tsx';
import { useGlideWords } from '../words/glide-catalogues.ts';
import { useSeenByWords } from '../words/seen-by-catalogues.ts';
import { useWords } from '../words/words-context.tsx';
import { rangeLines } from './range-lines.ts';

/** How far each measured leg went: drawn, and in sentences. */
export function MeasuredPart({ lines }: { readonly lines: readonly LineProgress[] }) {
  const words = useWords();
  const { report, locale } = words;
  const { measured } = report;
  const glideWords = useGlideWords();
  const { mixed, footTapMethod } = useSeenByWords();
  const shown = lines.filter(({ range, glides }) => range !== null || glides.length > 0);
  return (
    <section>
      <h2>{measured.title}</h2>
      {shown.length === 0 ? (
        <p>{measured.none}</p>
      ) : (
        <p className="report-fine">
          {measured.method} {shown.some(({ item }) => item.exercise === 'toe-lift') ? `${measured.toeMethod} ` : ''}
          {shown.some(({ item, range }) => item.exercise === 'foot-tap' && range?.seenBy === 'stickers')
            ? `${footTapMethod} `
            : ''}
          {measured.key} {measured.errors}
        </p>
      )}
      <div className="report-charts">
        {shown.map(({ item, side, days, range, glides }) => (
          <div key={`${item.id} ${side}`} className="report-chart">
            <h3>
              {prescribedWords(item.exercise, words).plural}, {limbsOf(item.exercise, words)[side].legLower}
            </h3>
            {range ? (
              <RangeChart range={range} target={item.target} days={days.map(({ day }) => day)} height={CHART_HEIGHT} />
            ) : null}
            <p>
              {[
                ...glidesTold(glides, glideWords, locale),
                ...(range ? rangeLines(range, item.target, report, locale) : []),
                ...(range?.mixed ? [mixed[range.seenBy]] : []),
              ].join(' ')}
            </p>
          </div>
        ))}
      </div>
    </section>
  );
}

/** Low enough for eight of them on two pages, px. Chosen. */
export const CHART_HEIGHT = 96;
