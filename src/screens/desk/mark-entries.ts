import type { AngleMark } from '../../symptoms/angle-mark.ts';
import type { Entry } from '../../symptoms/entry.ts';
import { type Mark, trialOf } from './marks.ts';

/**
 * Marks as entries of the diary: angles and notes, no pictures. What was not measured is left out.
 * @param marks all of the session, which number the trials
 * @param kept ids of those that are in the diary already
 */
export function entriesOf(
  marks: readonly Mark[],
  kept: ReadonlySet<string>,
  { sessionId, entry }: { readonly sessionId: string; readonly entry: () => Entry },
): readonly AngleMark[] {
  return marks.flatMap((mark): readonly AngleMark[] => {
    const { id, kind, exercise, side, from, notes, reading } = mark;
    if (!reading || kept.has(id)) return [];
    const trial = trialOf(marks, { ...mark, reading });
    return [{ ...entry(), id, kind: 'angle-mark', exercise, side, mark: kind, trial, ...reading, from, ...notes, sessionId }];
  });
}
