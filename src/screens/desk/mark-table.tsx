import { trialsOf } from '../../compare/trials.ts';
import type { ExerciseId } from '../../exercises/exercise.ts';
import { ANGLE_MARKS } from '../../symptoms/angle-mark.ts';
import { degreesIn } from '../result/degrees.ts';
import { useStillWords } from '../words/still-catalogues.ts';
import { useWords } from '../words/words-context.tsx';
import { type Mark, type MarkGroup, marksOf } from './marks.ts';

const SIDES = ['left', 'right'] as const;
const ZEROS = ['rest', 'own'] as const;

/** The groups of one movement in which anything was marked. */
export const groupsOf = (marks: readonly Mark[], exercise: ExerciseId): readonly MarkGroup[] =>
  ZEROS.flatMap((zero) =>
    SIDES.flatMap((side) =>
      ANGLE_MARKS.map((kind) => ({ side, kind, zero })).filter((group) => marksOf(marks, exercise, group).length > 0),
    ),
  );

/** Each trial, mean and spread, a row for each leg and kind; what counts from rest and what does not are apart. */
export function MarkTable({ marks, exercise }: { readonly marks: readonly Mark[]; readonly exercise: ExerciseId }) {
  const { desk, sides, locale } = useWords();
  const still = useStillWords();
  const degrees = degreesIn(locale);
  const rows = groupsOf(marks, exercise).map((group) => ({ group, own: marksOf(marks, exercise, group) }));
  const most = Math.max(1, ...rows.map(({ own }) => own.length));
  const both = new Set(rows.map(({ group }) => group.zero)).size > 1;
  return (
    // biome-ignore lint/a11y/noNoninteractiveTabindex: many trials are wider than a phone, and are scrolled by keyboard too.
    <section className="desk-table" aria-label={desk.results} tabIndex={0}>
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
          {rows.map(({ group: { side, kind, zero }, own }) => {
            const all = trialsOf(own.map(({ reading }) => reading.angleDeg));
            return (
              <tr key={`${side} ${kind} ${zero}`}>
                <th scope="row">
                  {sides[side].leg}, {desk.mark[kind]}
                  {both ? <span className="soft small"> {still.zeroShort[zero]}</span> : null}
                </th>
                {Array.from({ length: most }, (_, i) => own[i]).map((mark, i) => (
                  <td key={mark?.id ?? i} data-label={desk.trial(i + 1)}>
                    {mark ? `${degrees(mark.reading.angleDeg)}°` : ''}
                    {mark?.reading.method === 'corrected' ? <span className="mark-corrected small"> {still.byHand}</span> : null}
                  </td>
                ))}
                <td data-label={desk.mean}>{all ? `${degrees(all.meanDeg)}°` : ''}</td>
                <td data-label={desk.spread}>{all?.spreadDeg == null ? '' : `${degrees(all.spreadDeg)}°`}</td>
              </tr>
            );
          })}
        </tbody>
      </table>
    </section>
  );
}
