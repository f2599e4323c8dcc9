import { legGroups } from '../../dose/leg-groups.ts';
import type { PrescribedExercise } from '../../dose/prescribed-exercise.ts';
import { ExerciseDrawing } from '../choose/exercise-drawing.tsx';
import { useWords } from '../words/words-context.tsx';
import './plan-lines.css';
import { groupSays } from './plan-says.ts';

interface PlanGroupProps {
  readonly group: readonly PrescribedExercise[];
  readonly once: readonly string[];
}

/** One exercise of a plan: drawn, named, and the dose of each leg; what the legs share is said once. */
function PlanGroup({ group, once }: PlanGroupProps) {
  const words = useWords();
  const { name, about, lines, shared, cautions } = groupSays(group, words, once);
  const sides = group.flatMap((item) => item.sides.map((side) => ({ side, exercise: item.exercise })));
  const parted = lines.length > 1;
  return (
    <li>
      <div className="plan-lines-drawings" data-count={sides.length}>
        {sides.map(({ side, exercise }) => (
          <ExerciseDrawing key={side} exercise={exercise} side={side} />
        ))}
      </div>
      <div className="plan-lines-words">
        <h2>
          {name}
          {parted ? null : <span className="plan-lines-legs">{lines[0]?.legs}</span>}
        </h2>
        {lines.map(({ legs, dose, own }) => (
          <p key={legs} className="plan-lines-dose">
            {parted ? <span className="plan-lines-legs">{`${legs}: `}</span> : null}
            {own.length > 0 ? `${dose}. ` : dose}
            {own.length > 0 ? <span className="plan-lines-own">{own.join(' ')}</span> : null}
          </p>
        ))}
        <p>{`${about} `}</p>
        {shared.length > 0 ? <p>{shared.join(' ')}</p> : null}
        {cautions.length > 0 ? <p className="plan-lines-cautions">{cautions.join(' ')}</p> : null}
      </div>
    </li>
  );
}

interface PlanLinesProps {
  readonly items: readonly PrescribedExercise[];
  /** What is said for all of them elsewhere. */
  readonly once?: readonly string[];
}

/** What a plan says, exercise by exercise, on the screen and on paper. */
export const PlanLines = ({ items, once = [] }: PlanLinesProps) => (
  <ul className="plan-lines">
    {legGroups(items).map((group) => (
      <PlanGroup key={group[0]?.id} group={group} once={once} />
    ))}
  </ul>
);
