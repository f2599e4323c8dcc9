import { rangeDifference } from '../../compare/range-difference.ts';
import { rangeChangeOf } from '../../compare/range-error.ts';
import { trialsOf } from '../../compare/trials.ts';
import type { ExerciseId } from '../../exercises/exercise.ts';
import { deg } from '../../units.ts';
import { useCopy } from '../parts/use-copy.ts';
import { degreesIn } from '../result/degrees.ts';
import { useWords } from '../words/words-context.tsx';
import { MARK_KINDS, type Mark, type MarkKind, valuesOf } from './marks.ts';
import { resultsText } from './results-text.ts';

const SIDES = ['left', 'right'] as const;

/** Left against right for one kind of mark, in words; nothing while one of them has none. */
function Between({
  marks,
  exercise,
  kind,
}: {
  readonly marks: readonly Mark[];
  readonly exercise: ExerciseId;
  readonly kind: MarkKind;
}) {
  const { desk, compare, sides, locale } = useWords();
  const degrees = degreesIn(locale);
  const [left, right] = [valuesOf(marks, exercise, kind, 'left'), valuesOf(marks, exercise, kind, 'right')];
  if (left.length === 0 || right.length === 0) return null;
  const found = rangeDifference(exercise, 'marks', left, right);
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

/** The marked angles of one movement: each trial, mean and spread, and one leg against the other. */
export function DeskResults({
  marks,
  exercise,
  onForget,
}: {
  readonly marks: readonly Mark[];
  readonly exercise: ExerciseId;
  readonly onForget: () => void;
}) {
  const words = useWords();
  const { desk, sides, exercises, locale } = words;
  const { copied, copy } = useCopy();
  const degrees = degreesIn(locale);
  const own = marks.filter((mark) => mark.exercise === exercise);
  if (own.length === 0) return <p className="soft">{desk.none}</p>;
  const rows = SIDES.flatMap((side) =>
    MARK_KINDS.map((kind) => ({ side, kind, values: valuesOf(marks, exercise, kind, side) })),
  ).filter(({ values }) => values.length > 0);
  const most = Math.max(1, ...rows.map(({ values }) => values.length));
  const lost = own.filter(({ fromRestDeg }) => fromRestDeg === null).length;
  return (
    <section className="desk-results">
      <h2>
        {exercises[exercise].name}. {desk.results}
      </h2>
      <div className="desk-table">
        <table className="numbers">
          <thead>
            <tr>
              <td />
              {Array.from({ length: most }, (_, i) => (
                // biome-ignore lint/suspicious/noArrayIndexKey: a trial has no other name than its place.
                <th key={i} scope="col">
                  {desk.trial(i + 1)}
                </th>
              ))}
              <th scope="col">{desk.mean}</th>
              <th scope="col">{desk.spread}</th>
            </tr>
          </thead>
          <tbody>
            {rows.map(({ side, kind, values }) => {
              const all = trialsOf(values);
              return (
                <tr key={`${side} ${kind}`}>
                  <th scope="row">
                    {sides[side].leg}, {desk.mark[kind]}
                  </th>
                  {Array.from({ length: most }, (_, i) => values[i]).map((value, i) => (
                    // biome-ignore lint/suspicious/noArrayIndexKey: the same.
                    <td key={i}>{value === undefined ? '' : `${degrees(value)}°`}</td>
                  ))}
                  <td>{all ? `${degrees(all.meanDeg)}°` : ''}</td>
                  <td>{all?.spreadDeg == null ? '' : `${degrees(all.spreadDeg)}°`}</td>
                </tr>
              );
            })}
          </tbody>
        </table>
      </div>
      {lost > 0 ? <p>{`${lost} × ${desk.notMeasured}`}</p> : null}
      {MARK_KINDS.map((kind) => (
        <Between key={kind} marks={marks} exercise={exercise} kind={kind} />
      ))}
      <p className="soft">
        {desk.error(degrees(rangeChangeOf(exercise, 'marks')))} {desk.method}
      </p>
      <p className="soft">{desk.notKept}</p>
      <div className="day-actions">
        <button type="button" className="button" onClick={() => void copy(resultsText(marks, exercise, words))}>
          {desk.copy}
        </button>
        <button type="button" className="button" onClick={onForget}>
          {desk.forget}
        </button>
        <span role="status">{copied ? desk.copied : ''}</span>
      </div>
    </section>
  );
}
