import { type GlideSet, glideCount } from '../../dose/glide-sets.ts';
import type { Deg } from '../../units.ts';
import { ValueTable } from '../chart/value-table.tsx';
import { whenIn } from '../parts/when.ts';
import { degreesIn } from '../result/degrees.ts';
import { useGlideWords } from '../words/glide-catalogues.ts';
import { useWords } from '../words/words-context.tsx';
import { strengthsAround } from './felt-in.ts';
import { countTold, legTold } from './glide-told.ts';

/** Every set of glides of one leg in numbers, folded away, with what was felt around it. Nothing without one. */
export function GlideSetsTable({ sets }: { readonly sets: readonly GlideSet[] }) {
  const words = useGlideWords();
  const { review, locale } = useWords();
  const { told, numbers } = words;
  if (sets.length === 0) return null;
  const degrees = degreesIn(locale);
  const range = (value: Deg | null, error: Deg | null) => {
    if (value === null) return numbers.notSeen;
    return error === null ? `${degrees(value)}°` : `${degrees(value)}° ± ${degrees(error)}°`;
  };
  const { columns } = told;
  return (
    <ValueTable
      summary={told.table}
      columns={[review.lines.when, columns.slides, columns.foot, columns.head, columns.leg, columns.felt, columns.early]}
      rows={sets.map(({ id, endedAt, glide, around }) => ({
        key: id,
        cells: [
          whenIn(locale, endedAt),
          countTold(glideCount([glide]), words),
          range(glide.footRangeDeg, null),
          range(glide.headRangeDeg, glide.headUncertaintyDeg),
          glide.legHeld ? legTold(glide.legHeld, words, locale) : numbers.notSeen,
          strengthsAround(around) ?? '',
          glide.stopped ? told.stopped[glide.stopped] : '',
        ],
      }))}
    />
  );
}
