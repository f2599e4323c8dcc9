import type { MeasuredRep } from '../../measure/set-result.ts';
import { sameValue } from '../same-value.ts';
import { editUnion } from './edit-union.ts';
import type { FileSet } from './file-set.ts';

/** What two copies of one set make together. */
export type SetUnion =
  /** `grown`: the copy that came knew something that was not here. */
  | { readonly kind: 'same' | 'grown'; readonly set: FileSet; readonly editConflicts: number }
  /** The copies contradict one another; what is here stays. */
  | { readonly kind: 'conflict' };

/** What was measured when counting began, and never changes. */
const headOf = ({ state: _, reps: __, result: ___, edits: ____, ...head }: FileSet) => head;

/** Repetitions counted live, by their numbers; null when the copies have one that differs. */
function repUnion(here: readonly MeasuredRep[], coming: readonly MeasuredRep[]): readonly MeasuredRep[] | null {
  const all = new Map(here.map((rep) => [rep.number, rep]));
  for (const rep of coming) {
    const there = all.get(rep.number);
    if (there && !sameValue(there, rep)) return null;
    if (!there) all.set(rep.number, rep);
  }
  return all.size === here.length ? here : [...all.values()].toSorted((a, b) => a.number - b.number);
}

/**
 * Joins two copies of one set. Finished comes after interrupted or running, a result after none, however old the copy that has it: so the outcome does not
 * depend on which came first. A set that runs here goes on running unless the other copy knows its end.
 */
export function setUnion(here: FileSet, coming: FileSet): SetUnion {
  if (!sameValue(headOf(here), headOf(coming))) return { kind: 'conflict' };
  if (here.result && coming.result && !sameValue(here.result, coming.result)) return { kind: 'conflict' };
  const result = here.result ?? coming.result;
  const reps = result ? [] : repUnion(here.reps, coming.reps);
  if (!reps) return { kind: 'conflict' };
  const ended = coming.state === 'finished' ? coming.state : here.state;
  // One that still runs here has no end, unless its result came.
  const state = ended === 'running' && result ? 'interrupted' : ended;
  const { edits, conflicts } = editUnion(here.edits, coming.edits);
  const grown =
    state !== here.state || result !== here.result || (!result && reps.length > here.reps.length) || edits !== here.edits;
  return {
    kind: grown ? 'grown' : 'same',
    set: grown ? { ...here, state, result, reps, edits } : here,
    editConflicts: conflicts,
  };
}

/** A set as it comes from a file: nothing runs here of what ran elsewhere. */
export const arrived = (set: FileSet): FileSet => (set.state === 'running' ? { ...set, state: 'interrupted' } : set);
