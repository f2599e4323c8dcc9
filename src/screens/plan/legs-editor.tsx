import { withCaution } from '../../dose/cautions.ts';
import type { CautionId, PrescribedExercise, PrescribedExerciseId } from '../../dose/prescribed-exercise.ts';
import type { Side } from '../../pose/landmarks.ts';
import { OptionCards } from '../choose/option-cards.tsx';
import { useWords } from '../words/words-context.tsx';
import { CautionFields } from './caution-fields.tsx';
import { type Affected, copied, keptLeg, type LegsDraft, otherLeg, SIDES, withChange, withChoice } from './legs-draft.ts';
import './legs-editor.css';
import { LineEditor } from './line-editor.tsx';

interface LegsEditorProps {
  readonly exercise: PrescribedExerciseId;
  readonly legs: LegsDraft;
  /** The leg that the plan is about: its values stay when both become the same. */
  readonly affected: Affected;
  readonly onChange: (legs: LegsDraft) => void;
}

/** All of one exercise: which legs, one dose for what they share or one for each side by side, and its cautions. */
export function LegsEditor({ exercise, legs, affected, onChange }: LegsEditorProps) {
  const { plan, sides, prescribe } = useWords();
  const { choice, main, lines } = legs;
  const decided = (side: Side, part: Partial<PrescribedExercise>) =>
    onChange(withChange(legs, side, { ...part, basis: 'therapist' }));
  // The movement is the same with either leg, and so are its cautions.
  const caution = (id: CautionId, wanted: boolean) => {
    const changed = SIDES.map(
      (side) => [side, { cautions: withCaution(lines[side], id, wanted), basis: 'therapist' as const }] as const,
    );
    onChange(changed.reduce((draft, [side, part]) => withChange(draft, side, part), legs));
  };
  return (
    <details className="line-editor">
      <summary>{plan.change}</summary>
      <div className="line-editor-parts">
        <OptionCards
          legend={prescribe.legs.title}
          {...(choice === 'apart' ? { hint: prescribe.legs.keeps(sides[keptLeg(legs, affected)].legLower) } : {})}
          name={`legs-${exercise}`}
          options={[
            ...SIDES.map((side) => ({ value: side, name: sides[side].leg })),
            { value: 'same' as const, name: prescribe.legs.same },
            { value: 'apart' as const, name: prescribe.legs.apart },
          ]}
          chosen={choice}
          onChoose={(value) => onChange(withChoice(legs, value, affected))}
        />
        {choice === 'apart' ? (
          <div className="legs-apart">
            {SIDES.map((side) => (
              <fieldset key={side}>
                <legend>{sides[side].leg}</legend>
                <LineEditor line={lines[side]} onChange={(part) => decided(side, part)} />
                <button type="button" className="button" onClick={() => onChange(copied(legs, side))}>
                  {prescribe.legs.copyTo(sides[otherLeg(side)].legLower)}
                </button>
              </fieldset>
            ))}
          </div>
        ) : (
          <LineEditor line={lines[main]} onChange={(part) => decided(main, part)} />
        )}
        <CautionFields chosen={[...lines.left.cautions, ...lines.right.cautions]} onChange={caution} />
      </div>
    </details>
  );
}
