import { type Editable, editedReps } from '../../record/rep-edit.ts';

/** What a hand changed of a set, as it stands now. */
export interface EditSummary {
  readonly struck: number;
  readonly added: number;
  /** Measured and added repetitions together. */
  readonly of: number;
}

/** Null when all is as it was measured, also when every change was taken back. */
export function editSummary(set: Editable): EditSummary | null {
  const reps = editedReps(set);
  const struck = reps.filter((rep) => rep.kind === 'measured' && rep.struck).length;
  const added = reps.filter((rep) => rep.kind === 'added' && !rep.struck).length;
  const gone = reps.filter((rep) => rep.kind === 'added' && rep.struck).length;
  return struck + added === 0 ? null : { struck, added, of: reps.length - gone };
}
