import { sampleStandardDeviation } from 'simple-statistics';
import { intraclassCorrelation } from '../../src/compare/intraclass-correlation.ts';
import { limitsOfAgreement } from '../../src/compare/limits-of-agreement.ts';
import { meanSquares } from '../../src/compare/mean-squares.ts';
import { minimalDetectableChange } from '../../src/compare/minimal-detectable-change.ts';
import { standardError } from '../../src/compare/standard-error.ts';
import { plain } from '../accuracy/numbers.ts';
import type { Ratings } from './read-ratings.ts';

const to = ([low, high]: readonly [number, number]): string => `${plain(low, 1)} to ${plain(high, 1)}`;

/** Bias and limits of the second way less the first; only two ways have them. */
function differenceLines({ ways, rows }: Ratings): readonly string[] {
  const [first, second] = ways;
  if (ways.length !== 2) return [];
  const found = limitsOfAgreement(rows.map(([a = Number.NaN, b = Number.NaN]) => b - a));
  if (!found.ok) throw new Error(`differenceLines requires two people, got ${found.error.found}`);
  const { bias, biasInterval, limits, lowerInterval, upperInterval } = found.value;
  return [
    `${second} less ${first}: bias ${plain(bias, 1)} (95 % interval ${to(biasInterval)})`,
    `95 % limits of agreement: ${to(limits)} (their intervals ${to(lowerInterval)} and ${to(upperInterval)})`,
  ];
}

/** How two or more ways of measuring the same people agree, as lines for people. All in the unit of the values. */
export function agreementText(ratings: Ratings): string {
  const { ways, rows } = ratings;
  const squares = meanSquares(rows);
  if (!squares.ok) throw new Error(`agreementText requires a whole table, got ${squares.error.kind}`);
  const agreement = intraclassCorrelation(squares.value, '2,1');
  const consistency = intraclassCorrelation(squares.value, '3,1');
  const told = [`${rows.length} people, measured by ${ways.join(', ')}`, ...differenceLines(ratings)];
  if (!agreement.ok || !consistency.ok)
    return [...told, 'the people differ too little from each other: no correlation can be told', ''].join('\n');
  told.push(
    `intraclass correlation: ICC(2,1) ${plain(agreement.value, 2)} (agreement), ICC(3,1) ${plain(consistency.value, 2)} (consistency)`,
  );
  const sem = standardError(sampleStandardDeviation(rows.flat()), agreement.value);
  told.push(
    sem.ok
      ? `standard error of measurement ${plain(sem.value, 1)}, minimal detectable change (95 %) ${plain(minimalDetectableChange(sem.value), 1)}`
      : 'a correlation below 0 leaves nothing to tell from error: no standard error of measurement',
  );
  return [...told, ''].join('\n');
}
