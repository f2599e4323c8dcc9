import { markDifference } from '../../compare/mark-difference.ts';
import type { ExerciseId } from '../../exercises/exercise.ts';
import type { AngleMarkFor, MarkZero } from '../../symptoms/angle-mark.ts';
import { deg } from '../../units.ts';
import { degreesIn } from '../result/degrees.ts';
import { useWords } from '../words/words-context.tsx';
import { type Mark, marksOf } from './marks.ts';

interface MarkBetweenProps {
  readonly marks: readonly Mark[];
  readonly exercise: ExerciseId;
  readonly kind: AngleMarkFor;
  readonly zero: MarkZero;
}

/** Left against right for one kind of mark, in words; nothing while one of them has none. */
export function MarkBetween({ marks, exercise, kind, zero }: MarkBetweenProps) {
  const { desk, compare, sides, locale } = useWords();
  const degrees = degreesIn(locale);
  const readings = (side: 'left' | 'right') => marksOf(marks, exercise, { side, kind, zero }).map(({ reading }) => reading);
  const [left, right] = [readings('left'), readings('right')];
  if (left.length === 0 || right.length === 0) return null;
  const found = markDifference(exercise, left, right);
  if (!found.ok)
    return (
      <p>
        <strong>{desk.between(desk.mark[kind])}.</strong> {desk.tooFew}
      </p>
    );
  const { differenceDeg, limitDeg, verdict } = found.value;
  const leg = differenceDeg >= 0 ? 'left' : 'right';
  return (
    <p>
      <strong>{desk.between(desk.mark[kind])}.</strong> {desk.more(sides[leg].leg, degrees(deg(Math.abs(differenceDeg))))}{' '}
      {compare.verdict[verdict](degrees(limitDeg))}
    </p>
  );
}
