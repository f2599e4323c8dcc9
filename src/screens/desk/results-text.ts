import { trialsOf } from '../../compare/trials.ts';
import type { ExerciseId } from '../../exercises/exercise.ts';
import { degreesIn } from '../result/degrees.ts';
import type { Words } from '../words/words.ts';
import { MARK_KINDS, type Mark, valuesOf } from './marks.ts';

/** The marked angles of one movement as plain text for somebody's own notes. */
export function resultsText(marks: readonly Mark[], exercise: ExerciseId, { desk, exercises, sides, locale }: Words): string {
  const degrees = degreesIn(locale);
  const lines = (['left', 'right'] as const).flatMap((side) =>
    MARK_KINDS.flatMap((kind) => {
      const values = valuesOf(marks, exercise, kind, side);
      const all = trialsOf(values);
      if (!all) return [];
      const each = values.map((value) => `${degrees(value)}°`).join('; ');
      const spread = all.spreadDeg === null ? '' : `, ${desk.spread} ${degrees(all.spreadDeg)}°`;
      return [`${sides[side].leg}, ${desk.mark[kind]}: ${each}. ${desk.mean} ${degrees(all.meanDeg)}°${spread}`];
    }),
  );
  return [exercises[exercise].name, ...lines, desk.method].join('\n');
}
