import { FOOT_HELD, type FootHeld } from '../../symptoms/angle-mark.ts';
import { BODY_REGIONS, type BodyRegion } from '../../symptoms/place.ts';
import { Figure } from '../parts/figure.tsx';
import { degreesIn } from '../result/degrees.ts';
import { useStillWords } from '../words/still-catalogues.ts';
import { useWords } from '../words/words-context.tsx';
import './mark-list.css';
import { type Mark, type MarkNotes, type ReadMark, trialOf } from './marks.ts';

interface MarkListProps {
  /** All of the session. */
  readonly marks: readonly Mark[];
  /** Those that are listed. */
  readonly shown: readonly ReadMark[];
  readonly kept: ReadonlySet<string>;
  readonly onNotes: (id: string, notes: MarkNotes) => void;
  readonly onRemove: (id: string) => void;
}

/** Each mark with its error, how it was come by and what is noted with it; what is kept can no longer be changed. */
export function MarkList({ marks, shown, kept, onNotes, onRemove }: MarkListProps) {
  const { desk, feel, sides, locale } = useWords();
  const still = useStillWords();
  const degrees = degreesIn(locale);
  return (
    <ul className="mark-list">
      {shown.map((mark) => {
        const { id, side, kind, notes, reading } = mark;
        const name = `${sides[side].leg}, ${desk.mark[kind]}, ${desk.trial(trialOf(marks, mark))}`;
        const closed = kept.has(id);
        return (
          <li key={id} className="mark-item">
            <p className="numbers">
              <strong>{name}</strong>:{' '}
              <Figure>
                {degrees(reading.angleDeg)}° {still.plusMinus(degrees(reading.errorDeg))}
              </Figure>
              <br />
              <span className={reading.method === 'corrected' ? 'mark-corrected' : 'soft'}>{still.how[reading.method]}</span>
              {closed ? <span className="soft"> · {still.isKept}</span> : null}
            </p>
            <label>
              {still.foot}
              <select
                disabled={closed}
                aria-label={`${name}: ${still.foot}`}
                value={notes.foot ?? ''}
                onChange={({ currentTarget: { value } }) => onNotes(id, { ...notes, foot: (value || null) as FootHeld | null })}
              >
                <option value="">{still.notNoted}</option>
                {FOOT_HELD.map((held) => (
                  <option key={held} value={held}>
                    {still.footHeld[held]}
                  </option>
                ))}
              </select>
            </label>
            <label>
              {still.place}
              <select
                disabled={closed}
                aria-label={`${name}: ${still.place}`}
                value={notes.place?.region ?? ''}
                onChange={({ currentTarget: { value } }) =>
                  onNotes(id, { ...notes, place: value ? { region: value as BodyRegion, side } : null })
                }
              >
                <option value="">{still.notNoted}</option>
                {BODY_REGIONS.map((region) => (
                  <option key={region} value={region}>
                    {feel.regions[region]}
                  </option>
                ))}
              </select>
            </label>
            {closed ? null : (
              <button type="button" className="button" aria-label={`${still.remove}: ${name}`} onClick={() => onRemove(id)}>
                {still.remove}
              </button>
            )}
          </li>
        );
      })}
    </ul>
  );
}
