import type { RangeDifference, TooFewRepetitions } from '../../compare/range-difference.ts';
import { currentDose } from '../../dose/dose-step.ts';
import { glideCount } from '../../dose/glide-sets.ts';
import { currentPrescription } from '../../dose/prescription.ts';
import type { LineProgress } from '../../dose/progress.ts';
import { propose } from '../../dose/propose.ts';
import type { Result } from '../../result.ts';
import { prescribedWords } from '../day/prescribed-words.ts';
import { countTold } from '../glide/glide-told.ts';
import { Figure } from '../parts/figure.tsx';
import { doseIn } from '../report/prescribed-part.tsx';
import { degreesIn } from '../result/degrees.ts';
import { useGlideWords } from '../words/glide-catalogues.ts';
import type { Direction, ReviewWords } from '../words/review-words.ts';
import { useWords } from '../words/words-context.tsx';
import { directionOf, SIGNS } from './direction.ts';
import type { Reviewed } from './use-review.ts';

/** A difference with its sign, its word, its figure and its limit. */
function Difference({
  compared,
  none,
  names,
}: {
  readonly compared: Result<RangeDifference, TooFewRepetitions> | null;
  readonly none: string;
  readonly names: ReviewWords['glance']['direction'];
}) {
  const { review, locale } = useWords();
  const { glance } = review;
  if (!compared) return <span className="soft">{none}</span>;
  if (!compared.ok) return <span className="soft">{glance.tooFew}</span>;
  const { differenceDeg, limitDeg, verdict } = compared.value;
  const signed = new Intl.NumberFormat(locale, { minimumFractionDigits: 1, maximumFractionDigits: 1, signDisplay: 'exceptZero' });
  const direction: Direction = directionOf(differenceDeg, verdict);
  return (
    <>
      <strong>
        <span aria-hidden="true">{SIGNS[direction]}</span> {names[direction]}
      </strong>
      <span className="review-figure numbers">
        {glance.difference(signed.format(differenceDeg), degreesIn(locale)(limitDeg))}
      </span>
    </>
  );
}

/** Each line and leg in one row: done, how far, what changed, against the other leg, the dose. */
export function GlanceTable({
  lines,
  reviewed: { log, to },
}: {
  readonly lines: readonly LineProgress[];
  readonly reviewed: Reviewed;
}) {
  const words = useWords();
  const { review, progress, result, report, locale } = words;
  const { glance } = review;
  const glideWords = useGlideWords();
  const degrees = degreesIn(locale);
  const prescription = currentPrescription(log.prescriptions);
  return (
    <table className="plain-table review-glance" data-wide="true">
      <thead>
        <tr>
          {[glance.line, progress.sets, glance.range, glance.change, glance.other, glance.dose].map((column) => (
            <th key={column} scope="col">
              {column}
            </th>
          ))}
        </tr>
      </thead>
      <tbody>
        {lines.map(({ item, side, setsDue, setsDoneOfDue, range, glides }) => {
          const last = range?.days.at(-1);
          const proposal = prescription && propose(prescription, item, log, to);
          return (
            <tr key={`${item.id} ${side}`}>
              <th scope="row">
                {prescribedWords(item.exercise, words).plural}, {report.sides[side]}
              </th>
              <td className="numbers" data-label={progress.sets}>
                {progress.setsOf(setsDoneOfDue, setsDue)}
              </td>
              <td className="numbers" data-label={glance.range}>
                {last ? (
                  <Figure>{result.rangeValue(degrees(last.rangeDeg), degrees(last.bandDeg))}</Figure>
                ) : (
                  <span className="soft">{glance.noRange}</span>
                )}
                {glides.length > 0 ? (
                  <span className="review-figure review-sentence">
                    {countTold(glideCount(glides.map(({ glide }) => glide)), glideWords)}
                  </span>
                ) : null}
              </td>
              <td data-label={glance.change}>
                {range ? <Difference compared={range.change} none={glance.onlyDay} names={glance.direction} /> : null}
              </td>
              <td data-label={glance.other}>
                {range ? <Difference compared={range.otherSide} none={glance.noOther} names={glance.legs} /> : null}
              </td>
              <td data-label={glance.dose}>
                {prescription ? doseIn(currentDose(prescription, item, log.steps, to), words) : null}
                {proposal && proposal.kind !== 'hold' ? (
                  <strong className="review-figure">
                    {review.proposals.proposed}: {report.steps.kinds[proposal.kind]}
                  </strong>
                ) : null}
              </td>
            </tr>
          );
        })}
      </tbody>
    </table>
  );
}
