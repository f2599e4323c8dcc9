import type { LineProgress as Line } from '../../dose/progress.ts';
import { DoneKey, DoneStrip } from '../chart/done-strip.tsx';
import { ValueTable } from '../chart/value-table.tsx';
import { shortDayIn } from '../day/clock-words.ts';
import { prescribedWords } from '../day/prescribed-words.ts';
import { limbsOf } from '../parts/limb-words.ts';
import { degreesIn } from '../result/degrees.ts';
import { useSeenByWords } from '../words/seen-by-catalogues.ts';
import { useWords } from '../words/words-context.tsx';
import { RangeChart } from './range-chart.tsx';
import { rangeSentence } from './range-sentence.ts';

/** One line of the plan over the days: a sentence, a strip of days, and the same as a table. */
export function LineProgress({ line }: { readonly line: Line }) {
  const words = useWords();
  const { progress, locale } = words;
  const { item, side, days, setsDue, setsDoneOfDue, daysDone, range } = line;
  const degrees = degreesIn(locale);
  const { mixed } = useSeenByWords();
  const rangeOn = new Map(range?.days.map((each) => [each.day, each]));
  return (
    <section className="line-progress">
      <h2>
        {prescribedWords(item.exercise, words).plural}, {limbsOf(item.exercise, words)[side].legLower}
      </h2>
      <p>
        {setsDue > 0 ? progress.done(setsDoneOfDue, setsDue, daysDone) : progress.nothingDue}{' '}
        {range ? rangeSentence(range, progress, locale) : ''} {range?.mixed ? mixed[range.seenBy] : ''}
      </p>
      <DoneStrip days={days} label={progress.doneDrawn} />
      <DoneKey />
      {range ? <RangeChart range={range} target={item.target} days={days.map(({ day }) => day)} /> : null}
      <ValueTable
        summary={progress.asTable}
        columns={[progress.day, progress.sets, progress.range]}
        rows={days.map(({ day, setsDone, setsDue: due }) => {
          const measured = rangeOn.get(day);
          const range = measured ? `${degrees(measured.rangeDeg)}° ± ${degrees(measured.bandDeg)}°` : '';
          return { key: day, cells: [shortDayIn(locale, day), progress.setsOf(setsDone, due), range] };
        })}
      />
    </section>
  );
}
