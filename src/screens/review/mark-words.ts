import { deg } from '../../units.ts';
import { degreesIn } from '../result/degrees.ts';
import type { Words } from '../words/words.ts';
import type { MarkPair, MarkRow } from './mark-sessions.ts';

/** What was marked, from which zero, with the foot held how. */
export const whatIn = ({ mark, zero, foot }: Pick<MarkRow, 'mark' | 'zero' | 'foot'>, { marks: said }: Words['review']): string =>
  [said.kinds[mark], said.zero[zero], ...(foot ? [said.foot[foot]] : [])].join(', ');

/** How the angles were come by, where the symptom was felt, and how many a hand corrected. */
function howParts({ marks }: MarkRow, { review, feel, report }: Words): readonly string[] {
  const { marks: said } = review;
  const corrected = marks.filter(({ method }) => method === 'corrected').length;
  const methods = [...new Set(marks.flatMap(({ method }) => (method === 'corrected' ? [] : [said.method[method]])))];
  const sources = [...new Set(marks.map(({ from }) => said.from[from]))];
  const places = new Set(
    marks.flatMap(({ place }) => (place ? [`${feel.regions[place.region]}, ${report.sides[place.side]}`] : [])),
  );
  return [...sources, ...methods, ...(corrected > 0 ? [said.corrected(corrected, marks.length)] : []), ...places];
}

export const howIn = (row: MarkRow, words: Words): string => howParts(row, words).join('; ');

/** Whether one leg went further, beyond the error or not; null where there are too few trials to tell. */
export function verdictIn({ difference }: MarkPair, { review, sides, locale }: Words): string | null {
  if (!difference.ok) return null;
  const degrees = degreesIn(locale);
  const { differenceDeg, limitDeg, verdict } = difference.value;
  const leg = sides[differenceDeg >= 0 ? 'left' : 'right'].leg;
  return review.marks.verdict[verdict](leg, degrees(deg(Math.abs(differenceDeg))), degrees(limitDeg));
}

/** One leg against the other, in a sentence. */
export function pairIn(pair: MarkPair, words: Words): string {
  const { marks: said } = words.review;
  const what = whatIn(pair, words.review);
  const verdict = verdictIn(pair, words);
  return verdict === null ? said.tooFew(what) : `${said.against(what)} ${verdict}`;
}

/** The trials' mean, with their spread where there are several. */
export function meanIn({ trials }: MarkRow, { locale }: Words): string {
  const degrees = degreesIn(locale);
  return `${degrees(trials.meanDeg)}°${trials.spreadDeg === null ? '' : `, ${degrees(trials.spreadDeg)}°`}`;
}

/** The widest error of the trials. */
export const errorIn = ({ marks }: MarkRow, { locale }: Words): string =>
  `± ${degreesIn(locale)(deg(Math.max(...marks.map(({ errorDeg }) => errorDeg))))}°`;

/** Rows that differ in the leg alone, in one line: what was marked; each leg's mean with its spread and error; how all of it was come by. */
export function markRowsWords(rows: readonly [MarkRow, ...MarkRow[]], words: Words): string {
  const legs = rows.map((row) => {
    const n = row.marks.length;
    return `${words.sides[row.side].legLower} ${meanIn(row, words)} (${errorIn(row, words)}, n = ${n})`;
  });
  const how = new Set(rows.flatMap((row) => howParts(row, words)));
  return `${whatIn(rows[0], words.review)}: ${legs.join(', ')}; ${[...how].join('; ')}.`;
}
