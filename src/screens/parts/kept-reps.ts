import type { MeasuredRep } from '../../measure/set-result.ts';
import { type Editable, editedReps } from '../../record/rep-edit.ts';

/** The measured movements that were not struck out by hand, complete and partial, in order. */
export const keptReps = (set: Editable): readonly MeasuredRep[] =>
  editedReps(set).flatMap((r) => (r.kind === 'measured' && !r.struck ? [r.rep] : []));
