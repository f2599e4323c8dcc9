import type { Side } from '../../pose/landmarks.ts';
import { FOOT_HELD } from '../../symptoms/angle-mark.ts';
import { BODY_REGIONS } from '../../symptoms/place.ts';
import { useStillWords } from '../words/still-catalogues.ts';
import { useWords } from '../words/words-context.tsx';
import './mark-notes-fields.css';
import type { MarkNotes } from './marks.ts';

interface MarkNotesFieldsProps {
  readonly side: Side;
  readonly notes: MarkNotes;
  readonly onNotes: (notes: MarkNotes) => void;
}

/** How the foot is held and where the symptom is felt, noted with each mark from now on. Pressing a choice again takes it back. */
export function MarkNotesFields({ side, notes, onNotes }: MarkNotesFieldsProps) {
  const { feel } = useWords();
  const still = useStillWords();
  const { foot, place } = notes;
  return (
    <div className="mark-notes">
      <fieldset>
        <legend>{still.foot}</legend>
        <div className="mark-notes-choices" data-count={3}>
          {FOOT_HELD.map((held) => (
            <button
              key={held}
              type="button"
              className="button"
              aria-pressed={foot === held}
              onClick={() => onNotes({ ...notes, foot: foot === held ? null : held })}
            >
              {still.footHeld[held]}
            </button>
          ))}
        </div>
      </fieldset>
      <details>
        <summary>{still.placeIs(place ? feel.regions[place.region] : null)}</summary>
        <div className="mark-notes-choices">
          {BODY_REGIONS.map((region) => (
            <button
              key={region}
              type="button"
              className="button"
              aria-pressed={place?.region === region}
              onClick={() => onNotes({ ...notes, place: place?.region === region ? null : { region, side } })}
            >
              {feel.regions[region]}
            </button>
          ))}
        </div>
      </details>
    </div>
  );
}
