import type { RepEdit } from '../rep-edit.ts';
import { sameValue } from '../same-value.ts';

export interface EditUnion {
  /** In the order in which they hold. */
  readonly edits: readonly RepEdit[];
  /** How many have an id that stands here with something else; what is here stays. */
  readonly conflicts: number;
}

/** Whether all of `few` stand in `many`, in the same order. */
function isWithin(few: readonly RepEdit[], many: readonly RepEdit[]): boolean {
  let found = 0;
  for (const { id } of many) if (few[found]?.id === id) found += 1;
  return found === few.length;
}

const byMomentAndId = (a: RepEdit, b: RepEdit): number => {
  if (a.at !== b.at) return a.at < b.at ? -1 : 1;
  return a.id < b.id ? -1 : Number(a.id > b.id);
};

/**
 * The changes of both copies. Where one copy knows all of the other's, its order is kept, whatever the clock said; where each knows some that the other does
 * not, they stand by their moments, so that it does not matter which copy came first.
 */
export function editUnion(here: readonly RepEdit[], coming: readonly RepEdit[]): EditUnion {
  const known = new Map(here.map((edit) => [edit.id, edit]));
  const differing = coming.filter((edit) => known.has(edit.id) && !sameValue(known.get(edit.id), edit));
  const others = differing.length === 0 ? coming : coming.filter((edit) => !differing.includes(edit));
  const conflicts = differing.length;
  if (isWithin(others, here)) return { edits: here, conflicts };
  if (isWithin(here, others)) return { edits: others, conflicts };
  const fresh = others.filter(({ id }) => !known.has(id));
  return { edits: [...here, ...fresh].toSorted(byMomentAndId), conflicts };
}
