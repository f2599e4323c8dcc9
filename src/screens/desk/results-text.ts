import { trialsOf } from '../../compare/trials.ts';
import type { ExerciseId } from '../../exercises/exercise.ts';
import { degreesIn } from '../result/degrees.ts';
import { stillWordsIn } from '../words/still-catalogues.ts';
import type { Words } from '../words/words.ts';
import { groupsOf } from './mark-table.tsx';
import { type Mark, marksOf, type ReadMark } from './marks.ts';

/** The marked angles of one movement as plain text for somebody's own notes. */
export function resultsText(marks: readonly Mark[], exercise: ExerciseId, words: Words): string {
  const { desk, feel, exercises, sides, locale } = words;
  const still = stillWordsIn(locale);
  const degrees = degreesIn(locale);
  const each = ({ reading, notes: { foot, place } }: ReadMark) => {
    const beside = [
      ...(reading.method === 'followed' ? [] : [still.how[reading.method]]),
      ...(foot ? [`${still.foot}: ${still.footHeld[foot]}`] : []),
      ...(place ? [`${still.place}: ${feel.regions[place.region]}`] : []),
    ];
    return `${degrees(reading.angleDeg)}° ${still.plusMinus(degrees(reading.errorDeg))}${beside.length > 0 ? ` (${beside.join(', ')})` : ''}`;
  };
  const lines = groupsOf(marks, exercise).map((group) => {
    const own = marksOf(marks, exercise, group);
    const all = trialsOf(own.map(({ reading }) => reading.angleDeg));
    const spread = all?.spreadDeg == null ? '' : `, ${desk.spread} ${degrees(all.spreadDeg)}°`;
    const mean = all ? ` ${desk.mean} ${degrees(all.meanDeg)}°${spread}` : '';
    const from = group.zero === 'rest' ? still.fromRest : still.ownAngle[exercise];
    return `${sides[group.side].leg}, ${desk.mark[group.kind]}, ${from}: ${own.map(each).join('; ')}.${mean}`;
  });
  return [exercises[exercise].name, ...lines, desk.method].join('\n');
}
