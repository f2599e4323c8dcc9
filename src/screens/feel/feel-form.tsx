import type { Side } from '../../pose/landmarks.ts';
import { type Felt, SYMPTOM_KINDS } from '../../symptoms/felt.ts';
import { BODY_REGIONS } from '../../symptoms/place.ts';
import { useWords } from '../words/words-context.tsx';
import { BodyDrawing } from './body-drawing.tsx';
import './feel-form.css';
import { hasKind, hasPlace, withKind, withPlace } from './feeling.ts';
import { StrengthScale } from './strength-scale.tsx';

const SIDES: readonly Side[] = ['left', 'right'];

interface FeelFormProps {
  readonly felt: Felt;
  readonly onChange: (felt: Felt) => void;
}

/** Every place of one leg, to be ticked. */
function PlaceList({ side, felt, onChange }: FeelFormProps & { readonly side: Side }) {
  const { feel, sides } = useWords();
  return (
    <fieldset>
      <legend>{sides[side].leg}</legend>
      {BODY_REGIONS.map((region) => (
        <label key={region} className="feel-tick">
          <input
            type="checkbox"
            checked={hasPlace(felt, { region, side })}
            onChange={() => onChange(withPlace(felt, { region, side }))}
          />
          {feel.regions[region]}
        </label>
      ))}
    </fieldset>
  );
}

/** How strong, what and where. Nothing is compulsory. */
export function FeelForm({ felt, onChange }: FeelFormProps) {
  const { feel } = useWords();
  return (
    <div className="feel-form">
      <StrengthScale
        name="intensity"
        legend={feel.intensity}
        value={felt.intensity}
        onChange={(intensity) => onChange({ ...felt, intensity })}
      />
      <fieldset className="feel-kinds">
        <legend>{feel.kindsTitle}</legend>
        <div>
          {SYMPTOM_KINDS.map((kind) => (
            <label key={kind} className="feel-tick">
              <input type="checkbox" checked={hasKind(felt, kind)} onChange={() => onChange(withKind(felt, kind))} />
              {feel.kinds[kind]}
            </label>
          ))}
        </div>
      </fieldset>
      <section className="feel-places" aria-labelledby="places-title">
        <h2 id="places-title">{feel.placesTitle}</h2>
        <p className="soft">{feel.placesHint}</p>
        <BodyDrawing felt={felt} onPlace={(place) => onChange(withPlace(felt, place))} />
        <details>
          <summary>{feel.list}</summary>
          <div className="feel-lists">
            {SIDES.map((side) => (
              <PlaceList key={side} side={side} felt={felt} onChange={onChange} />
            ))}
          </div>
        </details>
      </section>
    </div>
  );
}
