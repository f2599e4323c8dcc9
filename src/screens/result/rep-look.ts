import type { EditedRep } from '../../record/rep-edit.ts';

/** How a repetition stands after the changes by hand: each has its own fill, mark and word. */
export type RepLook = 'complete' | 'partial' | 'struck' | 'added';

export function lookOf(rep: EditedRep): RepLook {
  if (rep.struck) return 'struck';
  if (rep.kind === 'added') return 'added';
  return rep.rep.complete ? 'complete' : 'partial';
}
