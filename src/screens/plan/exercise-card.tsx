import type { PrescribedExercise, PrescribedExerciseId } from '../../dose/prescribed-exercise.ts';
import { standingOfDose } from '../../dose/usual-dose.ts';
import { prescribedWords } from '../day/prescribed-words.ts';
import { useWords } from '../words/words-context.tsx';
import './exercise-card.css';
import { type Affected, itemsOf, type LegsDraft, newLegs } from './legs-draft.ts';
import { LegsEditor } from './legs-editor.tsx';

type Role = 'therapist' | 'patient';

interface LineSummaryProps {
  readonly item: PrescribedExercise;
  readonly named: boolean;
  readonly role: Role;
}

/** The dose of a line in a few words, and where it comes from. */
function LineSummary({ item, named, role }: LineSummaryProps) {
  const { day, plan, sides, prescribe } = useWords();
  const standing = standingOfDose(item);
  const [first = 'left', second] = item.sides;
  const legs = second ? plan.both : sides[first].leg;
  const dose = `${day.dose(item.start.repsASet, item.start.holdS)}, ${plan.setsADay(item.start.setsADay)}`;
  return (
    <span className="exercise-dose small">
      {named ? `${legs}: ${dose}` : dose}
      <span className="exercise-standing" data-standing={standing}>
        {standing === 'decided' ? prescribe.decided[role] : prescribe.standing[standing]}
      </span>
    </span>
  );
}

interface ExerciseCardProps {
  readonly exercise: PrescribedExerciseId;
  readonly taken: boolean;
  /** Null: never looked at. */
  readonly legs: LegsDraft | null;
  readonly affected: Affected;
  readonly role: Role;
  readonly onTake: (taken: boolean) => void;
  readonly onChange: (legs: LegsDraft) => void;
}

/** One exercise to take into the plan, with its dose and all that can be changed of it. */
export function ExerciseCard({ exercise, taken, legs, affected, role, onTake, onChange }: ExerciseCardProps) {
  const words = useWords();
  const { name, about } = prescribedWords(exercise, words);
  const items = itemsOf(legs ?? newLegs(exercise, affected));
  return (
    <li className="plan-item" data-chosen={taken}>
      <label className="plan-line">
        <input type="checkbox" checked={taken} onChange={(event) => onTake(event.currentTarget.checked)} />
        <span>
          <strong>{name}</strong>
          <span className="soft small">{about}</span>
          {items.map((item) => (
            <LineSummary key={item.id} item={item} named={taken} role={role} />
          ))}
        </span>
      </label>
      {taken && legs ? <LegsEditor exercise={exercise} legs={legs} affected={affected} onChange={onChange} /> : null}
    </li>
  );
}
