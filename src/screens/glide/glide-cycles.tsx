import type { GlideResult } from '../../measure/set-result.ts';
import type { Deg } from '../../units.ts';
import { ValueTable } from '../chart/value-table.tsx';
import { clockOf } from '../result/clock.ts';
import { degreesIn } from '../result/degrees.ts';
import { useGlideWords } from '../words/glide-catalogues.ts';
import { useWords } from '../words/words-context.tsx';
import './glide-cycles.css';

/** Above this a chance is not written to the last digit. Chosen. */
const SURE = 0.999;

/** Every cycle in numbers, folded away, in the trade's terms. Nothing without a cycle. */
export function GlideCycles({ glide }: { readonly glide: GlideResult }) {
  const { cycles: words, marks, numbers } = useGlideWords();
  const { locale } = useWords();
  if (glide.cycles.length === 0) return null;
  const degrees = degreesIn(locale);
  const range = (value: Deg | null) => (value === null ? numbers.notSeen : `${degrees(value)}°`);
  const percent = new Intl.NumberFormat(locale, { style: 'percent', maximumFractionDigits: 1 });
  const { columns } = words;
  return (
    <section className="glide-cycles">
      <ValueTable
        summary={words.summary}
        note={words.explained}
        columns={[
          columns.number,
          columns.at,
          columns.pattern,
          columns.phase,
          columns.sure,
          columns.foot,
          columns.head,
          columns.why,
        ]}
        rows={glide.cycles.map(({ startMs, pattern, phaseDeg, certainty, footRangeDeg, headRangeDeg, reason }, i) => ({
          key: String(startMs),
          cells: [
            i + 1,
            clockOf(startMs),
            words.patterns[pattern],
            phaseDeg === null ? '' : `${Math.round(phaseDeg)}°`,
            phaseDeg === null ? '' : certainty > SURE ? `> ${percent.format(SURE)}` : percent.format(certainty),
            range(footRangeDeg),
            range(headRangeDeg),
            reason ? marks.reasons[reason] : '',
          ],
        }))}
      />
    </section>
  );
}
