import type { EditedRep } from '../../record/rep-edit.ts';
import type { Deg } from '../../units.ts';
import { Figure } from '../parts/figure.tsx';
import { Icon } from '../parts/icon.tsx';
import type { Change } from '../services.ts';
import { useWords } from '../words/words-context.tsx';
import { clockOf } from './clock.ts';
import { degreesIn } from './degrees.ts';
import { lookOf } from './rep-look.ts';
import { secondsIn } from './seconds.ts';

interface RepRowProps {
  readonly rep: EditedRep;
  readonly number: number;
  /** The longest bar's range. */
  readonly widestDeg: Deg;
  readonly onChange: (change: Change) => void;
}

/** A measured range as a bar with its error, and in numbers. */
function RangeBar({ rep, widestDeg }: { readonly rep: EditedRep; readonly widestDeg: Deg }) {
  const { result, set, locale } = useWords();
  const seconds = secondsIn(locale);
  if (rep.kind === 'added') return <span className="soft">{result.notMeasured}</span>;
  const { rangeDeg, uncertaintyDeg, flags, footDeg, footUncertaintyDeg, upMs, sankAfterMs, source } = rep.rep;
  const degrees = degreesIn(locale);
  const share = (d: number) => `${Math.max(0, Math.min(100, (d / widestDeg) * 100))}%`;
  const foot =
    footDeg === null || footUncertaintyDeg === null ? [] : [result.foot(Math.round(footDeg), Math.round(footUncertaintyDeg))];
  const up = upMs === null ? [] : [result.up(seconds(upMs), sankAfterMs === null ? null : seconds(sankAfterMs))];
  // What has a number of its own is not said twice; one that was cut short need not be a small one.
  const cut = flags.includes('tracking-gap');
  const notes = flags
    .filter((flag) => flag !== 'sinking' && !(flag === 'partial' && cut) && !(flag === 'recounted' && rep.rep.complete))
    .map((flag) => (flag === 'tracking-gap' && source === 'stickers' ? set.stickers.gap : result.flags[flag]));
  const plain = [...up, ...foot];
  return (
    <>
      <span className="rep-value numbers">
        <Figure>{result.rangeValue(degrees(rangeDeg), degrees(uncertaintyDeg))}</Figure>
      </span>
      <span className="rep-bar" aria-hidden="true">
        <span className="rep-bar-range" style={{ width: share(rangeDeg) }} />
        <span
          className="rep-bar-error"
          style={{
            insetInlineStart: share(rangeDeg - uncertaintyDeg),
            width: share(Math.min(rangeDeg, uncertaintyDeg) + uncertaintyDeg),
          }}
        />
      </span>
      {plain.length + notes.length > 0 ? (
        <span className="rep-flags small">
          {/* What was measured is no warning. */}
          {plain.length > 0 ? <span className="soft">{plain.join(', ')}</span> : null}
          {plain.length > 0 && notes.length > 0 ? ', ' : null}
          {notes.join(', ')}
        </span>
      ) : null}
    </>
  );
}

/** One repetition: range, time, whether it counts, and the button that changes that. */
export function RepRow({ rep, number, widestDeg, onChange }: RepRowProps) {
  const { result } = useWords();
  const look = lookOf(rep);
  return (
    <tr className="rep" data-look={look}>
      <th scope="row" className="numbers">
        {number}
      </th>
      <td className="rep-range">
        <RangeBar rep={rep} widestDeg={widestDeg} />
      </td>
      <td className="rep-time numbers soft">{rep.kind === 'measured' ? clockOf(rep.rep.startMs) : ''}</td>
      <td className="rep-state">
        <span>
          <Icon
            name={look === 'struck' ? 'cross' : look === 'partial' ? 'minus' : look === 'added' ? 'plus' : 'check'}
            size={18}
          />
          {result.states[look]}
        </span>
      </td>
      <td className="rep-change">
        <button
          type="button"
          className="button"
          aria-label={rep.struck ? result.restore(number) : result.strike(number)}
          onClick={() => onChange({ kind: rep.struck ? 'restore' : 'strike', rep: rep.ref })}
        >
          {rep.struck ? result.restoreShort : result.strikeShort}
        </button>
      </td>
    </tr>
  );
}
