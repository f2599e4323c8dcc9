import type { MeasuredRep } from '../measure/set-result.ts';

/** The repetition that an edit is about: a measured one by its number, or one added by hand by the id of the edit that added it. */
export type RepRef = { readonly kind: 'measured'; readonly number: number } | { readonly kind: 'added'; readonly id: string };

interface EditBase {
  /** UUID, see `new-id.ts`. */
  readonly id: string;
  readonly schema: 1;
  readonly setId: string;
  /** ISO 8601, UTC, with milliseconds. */
  readonly at: string;
  readonly note?: string;
}

/** One change by hand, immutable: a wrong repetition struck, a struck one restored, a missed one added. */
export type RepEdit = EditBase & ({ readonly kind: 'strike' | 'restore'; readonly rep: RepRef } | { readonly kind: 'add' });

/** A repetition with the edits applied. */
export type EditedRep =
  | { readonly kind: 'measured'; readonly ref: RepRef; readonly rep: MeasuredRep; readonly struck: boolean }
  | { readonly kind: 'added'; readonly ref: RepRef; readonly at: string; readonly note: string | null; readonly struck: boolean };

/** What the edits are applied to. A `StoredSet` is one. */
export interface Editable {
  readonly reps: readonly MeasuredRep[];
  readonly edits: readonly RepEdit[];
}

export const sameRep = (a: RepRef, b: RepRef): boolean =>
  a.kind === 'measured' ? b.kind === 'measured' && a.number === b.number : b.kind === 'added' && a.id === b.id;

/** Whether the last word on a repetition was to strike it. */
const isStruck = (edits: readonly RepEdit[], ref: RepRef): boolean =>
  edits.findLast((edit) => edit.kind !== 'add' && sameRep(edit.rep, ref))?.kind === 'strike';

/** The measured repetitions in order, struck or not, then those added by hand in the order in which they were added. */
export function editedReps({ reps, edits }: Editable): readonly EditedRep[] {
  const measured = reps.map((rep): EditedRep => {
    const ref = { kind: 'measured', number: rep.number } as const;
    return { kind: 'measured', ref, rep, struck: isStruck(edits, ref) };
  });
  const added = edits.flatMap((edit): readonly EditedRep[] => {
    if (edit.kind !== 'add') return [];
    const ref = { kind: 'added', id: edit.id } as const;
    return [{ kind: 'added', ref, at: edit.at, note: edit.note ?? null, struck: isStruck(edits, ref) }];
  });
  return [...measured, ...added];
}

/** How many repetitions the set counts after the edits. Partial movements are never counted; one added by hand is. */
export const editedCount = (set: Editable): number =>
  editedReps(set).filter((rep) => !rep.struck && (rep.kind === 'added' || rep.rep.complete)).length;
