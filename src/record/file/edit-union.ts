import { byMoment } from '../../symptoms/entry.ts';
import type { RepEdit } from '../rep-edit.ts';
import { sameValue } from '../same-value.ts';

export interface EditUnion {
  /** In the order in which they hold; the very array that was here when nothing came that was not. */
  readonly edits: readonly RepEdit[];
  /** How many have an id that stands here with something else; what is here stays. */
  readonly conflicts: number;
}

/**
 * The changes of both copies, by moment and id: the same whichever copy came first and however they were parted, since each was written after those that were
 * known where it was made (`written-after.ts`).
 * @param here in that order, as a store reads them
 */
export function editUnion(here: readonly RepEdit[], coming: readonly RepEdit[]): EditUnion {
  const known = new Map(here.map((edit) => [edit.id, edit]));
  const fresh = coming.filter(({ id }) => !known.has(id));
  const conflicts = coming.filter((edit) => known.has(edit.id) && !sameValue(known.get(edit.id), edit)).length;
  return { edits: fresh.length === 0 ? here : [...here, ...fresh].toSorted(byMoment), conflicts };
}
