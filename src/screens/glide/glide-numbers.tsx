import type { ReactNode } from 'react';
import type { GlideResult } from '../../measure/set-result.ts';
import type { Deg } from '../../units.ts';
import { shownCell } from '../parts/figure.tsx';
import { degreesIn } from '../result/degrees.ts';
import { useGlideWords } from '../words/glide-catalogues.ts';
import { useWords } from '../words/words-context.tsx';
import { againstLimit } from './against-limit.ts';
import './glide-numbers.css';

function Figure({ name, value, notes }: { readonly name: string; readonly value: ReactNode; readonly notes: readonly string[] }) {
  return (
    <div>
      <dt>{name}</dt>
      <dd className="numbers">{shownCell(value)}</dd>
      {notes.map((note) => (
        <dd key={note} className="soft small">
          {note}
        </dd>
      ))}
    </div>
  );
}

/** Where the leg was held, against its limit. */
function useLegNotes({ legHeld }: GlideResult): readonly string[] {
  const { numbers } = useGlideWords();
  const degrees = degreesIn(useWords().locale);
  if (!legHeld) return [];
  const where = { under: [], 'perhaps-over': [numbers.maybeOver], over: [numbers.over] }[againstLimit(legHeld)];
  return [
    numbers.limit[legHeld.limitFrom](degrees(legHeld.limitDeg)),
    [numbers.highest(degrees(legHeld.highestDeg)), ...where].join(' '),
  ];
}

interface GlideNumbersProps {
  readonly glide: GlideResult;
  /** Half the width of the 95 % interval of the foot's range; null: not known. */
  readonly footUncertaintyDeg: Deg | null;
}

/** How far foot and head went and how high the leg was held, each with its error. */
export function GlideNumbers({ glide, footUncertaintyDeg }: GlideNumbersProps) {
  const { numbers } = useGlideWords();
  const { result, locale } = useWords();
  const degrees = degreesIn(locale);
  const legNotes = useLegNotes(glide);
  const { footRangeDeg, headRangeDeg, headUncertaintyDeg, legHeld } = glide;
  const range = (name: string, value: Deg | null, error: Deg | null) => {
    if (value === null) return <Figure name={name} value={numbers.notSeen} notes={[]} />;
    const written = error === null ? `${degrees(value)}°` : result.rangeValue(degrees(value), degrees(error));
    return <Figure name={name} value={written} notes={[numbers.middle, ...(error === null ? [numbers.noError] : [])]} />;
  };
  return (
    <dl className="glide-numbers">
      {range(numbers.foot, footRangeDeg, footUncertaintyDeg)}
      {range(numbers.head, headRangeDeg, headUncertaintyDeg)}
      <Figure
        name={numbers.leg}
        value={legHeld ? result.rangeValue(degrees(legHeld.medianDeg), degrees(legHeld.uncertaintyDeg)) : numbers.notSeen}
        notes={legNotes}
      />
    </dl>
  );
}
