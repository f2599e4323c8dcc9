import type { PrescribedExercise } from '../../dose/prescribed-exercise.ts';
import { ExerciseDrawing } from '../choose/exercise-drawing.tsx';
import { useWords } from '../words/words-context.tsx';
import './plan-lines.css';
import { lineSays } from './plan-says.ts';

/** The cautions of a line but the one that stands apart, being of all lines: when to stop. */
const ownCautions = ({ cautions }: PrescribedExercise) => cautions.filter((id) => id !== 'stop-if-worse');

/** What a plan says, line by line, on the screen and on paper. */
export function PlanLines({ items }: { readonly items: readonly PrescribedExercise[] }) {
  const words = useWords();
  const { caution } = words.day.go;
  return (
    <ul className="plan-lines">
      {items.map((item) => {
        const { name, legs, about, dose, often, far, pace, rest, limit } = lineSays(item, words);
        return (
          <li key={item.id}>
            <div className="plan-lines-drawings" data-count={item.sides.length}>
              {item.sides.map((side) => (
                <ExerciseDrawing key={side} exercise={item.exercise} side={side} />
              ))}
            </div>
            <div className="plan-lines-words">
              <h2>
                {name}
                <span className="plan-lines-legs">{legs}</span>
              </h2>
              <p className="plan-lines-dose">{`${dose}; ${often}`}</p>
              <p>{about} </p>
              <p>{`${far} ${pace} `}</p>
              <p>{`${rest} ${limit}`}</p>
              {ownCautions(item).length > 0 ? (
                <p className="plan-lines-cautions">
                  {ownCautions(item)
                    .map((id) => caution[id])
                    .join(' ')}
                </p>
              ) : null}
            </div>
          </li>
        );
      })}
    </ul>
  );
}
