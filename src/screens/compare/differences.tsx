import type { PercentDifference } from '../../compare/percent-difference.ts';
import type { SetComparison } from '../../compare/set-against-set.ts';
import type { AnyExerciseId } from '../../exercises/exercise.ts';
import { deg, ms } from '../../units.ts';
import { Figure, shownCell } from '../parts/figure.tsx';
import { degreesIn } from '../result/degrees.ts';
import { secondsIn } from '../result/seconds.ts';
import { useGlideWords } from '../words/glide-catalogues.ts';
import { useWords } from '../words/words-context.tsx';

interface DifferencesProps {
  readonly comparison: SetComparison;
  readonly names: { readonly set: string; readonly other: string };
  /** Two legs, not two occasions. */
  readonly legs: boolean;
  readonly exercise: AnyExerciseId;
  /** Why no difference in how far is sure, whatever its size; null: its size tells. */
  readonly unsure: string | null;
}

/** Beside a time shorter than this a percentage says nothing: two or three pictures of the camera. Chosen. */
const LEAST_HOLD_MS = 300;

/** A difference with its sign, in words a table can hold. */
const signedIn = (locale: string, fractionDigits: number) =>
  new Intl.NumberFormat(locale, {
    signDisplay: 'exceptZero',
    minimumFractionDigits: fractionDigits,
    maximumFractionDigits: fractionDigits,
  });

/** A share of difference with its sign, as the language writes it. */
const percentIn = (locale: string) =>
  new Intl.NumberFormat(locale, { style: 'percent', signDisplay: 'exceptZero', maximumFractionDigits: 0 });

/** What two sets differ by: one sentence, then the numbers. */
export function Differences({ comparison, names, legs, exercise, unsure }: DifferencesProps) {
  const { compare, locale } = useWords();
  const { numbers } = useGlideWords();
  const { range, count, holdMs } = comparison;
  const degrees = degreesIn(locale);
  const seconds = secondsIn(locale);
  const percent = ({ percent: p }: PercentDifference) => (p === null ? compare.noPercent : percentIn(locale).format(p / 100));
  const time = (t: number) => `${seconds(ms(t))} s`;
  const sure = range.verdict === 'real' && unsure === null;
  const further = range.differenceDeg > 0 ? names.set : names.other;
  const words = compare.verdict[range.verdict];
  return (
    <section className="compare-differences" data-verdict={unsure === null ? range.verdict : 'within-error'}>
      <p className="compare-verdict">
        <strong>{sure ? compare.more(further, degrees(deg(Math.abs(range.differenceDeg)))) : compare.alike}</strong>{' '}
        {unsure ?? words(degrees(range.limitDeg))}
      </p>
      <table className="plain-table" data-wide="true">
        <thead>
          <tr>
            <th scope="col">
              <span className="heard">{compare.what}</span>
            </th>
            <th scope="col">{names.set}</th>
            <th scope="col">{names.other}</th>
            <th scope="col">{compare.difference}</th>
          </tr>
        </thead>
        <tbody className="numbers">
          <tr>
            <th scope="row">{exercise === 'nerve-glide' ? numbers.foot : compare.range}</th>
            <td data-label={names.set}>{degrees(range.rangeDeg)}°</td>
            <td data-label={names.other}>{degrees(range.referenceDeg)}°</td>
            <td data-label={compare.difference}>
              <Figure>{signedIn(locale, 1).format(range.differenceDeg)}°</Figure>
            </td>
          </tr>
          <tr>
            <th scope="row">{compare.count}</th>
            <td data-label={names.set}>{count.value}</td>
            <td data-label={names.other}>{count.reference}</td>
            <td data-label={compare.difference}>{shownCell(percent(count))}</td>
          </tr>
          {exercise === 'nerve-glide' ? null : (
            <tr>
              <th scope="row">{exercise === 'heel-stand' ? compare.up : compare.hold}</th>
              <td data-label={names.set}>{time(holdMs.value)}</td>
              <td data-label={names.other}>{time(holdMs.reference)}</td>
              <td data-label={compare.difference}>
                {holdMs.reference < LEAST_HOLD_MS ? compare.noPercent : shownCell(percent(holdMs))}
              </td>
            </tr>
          )}
        </tbody>
      </table>
      <p className="soft small">{legs ? compare.signLegs : compare.signTimes}</p>
    </section>
  );
}
