import type { ExerciseId } from '../../exercises/exercise.ts';
import type { Deg } from '../../units.ts';
import { Figure } from '../parts/figure.tsx';
import { Icon } from '../parts/icon.tsx';
import { degreesIn } from '../result/degrees.ts';
import { useStillWords } from '../words/still-catalogues.ts';
import { useWords } from '../words/words-context.tsx';
import type { Reading } from './marks.ts';

interface ReadingShownProps {
  readonly exercise: ExerciseId;
  /** Null: there is no angle here. */
  readonly reading: Reading | null;
  /** How far a raised leg's knee is bent; null: not told. */
  readonly kneeDeg: Deg | null;
}

/** The angle of a picture in large figures, its error, from where it counts and how it was come by. */
export function ReadingShown({ exercise, reading, kneeDeg }: ReadingShownProps) {
  const { locale } = useWords();
  const still = useStillWords();
  const degrees = degreesIn(locale);
  const whole = new Intl.NumberFormat(locale, { maximumFractionDigits: 0 });
  if (!reading)
    return (
      <div className="reading-shown">
        <p className="desk-angle numbers">–</p>
        <p>{still.noAngle}</p>
      </div>
    );
  const { angleDeg, errorDeg, zero, method } = reading;
  return (
    <div className="reading-shown">
      <p className="desk-angle numbers">{degrees(angleDeg)}°</p>
      <p className="numbers reading-error">
        <Figure>{still.plusMinus(degrees(errorDeg))}</Figure>
      </p>
      <p>{zero === 'rest' ? still.fromRest : still.ownAngle[exercise]}</p>
      {method === 'corrected' ? (
        <p className="reading-corrected">
          <Icon name="warning" />
          {still.how.corrected}
        </p>
      ) : (
        <p className="soft">{still.how[method]}</p>
      )}
      {kneeDeg === null ? null : <p className="soft numbers">{still.knee(whole.format(Math.round(kneeDeg) + 0))}</p>}
    </div>
  );
}
