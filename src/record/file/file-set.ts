import * as v from 'valibot';
import type { SetResult } from '../../measure/set-result.ts';
import type { StoredSet } from '../stored-set.ts';
import { resultShape, storedSetShape } from '../stored-set-shape.ts';
import { areSteps, type CurveSteps, curveOf, stepsOf } from './curve-steps.ts';

/** A set's result in a file: its curve as steps. */
export type FileResult = Omit<SetResult, 'curve'> & { readonly curve: CurveSteps };

/** A set in a file: whose it is stands in the manifest, and repetitions that are part of the result are not written twice. */
export type FileSet = Omit<StoredSet, 'person' | 'result'> & { readonly result: FileResult | null };

export const fileResultOf = ({ curve, ...rest }: SetResult): FileResult => ({ ...rest, curve: stepsOf(curve) });

export const resultOf = ({ curve, ...rest }: FileResult): SetResult => ({ ...rest, curve: curveOf(curve) });

export function fileSetOf({ person: _, result, reps, ...rest }: StoredSet): FileSet {
  return { ...rest, reps: result ? [] : reps, result: result && fileResultOf(result) };
}

const stepsShape = v.pipe(
  v.strictObject({
    t: v.custom<readonly number[]>((value) => Array.isArray(value) && areSteps(value, false), 'Expected whole steps'),
    a: v.custom<readonly (number | null)[]>((value) => Array.isArray(value) && areSteps(value, true), 'Expected whole steps'),
  }),
  v.check(({ t, a }) => t.length === a.length, 'must have as many angles as times'),
);

const { person: _, ...setEntries } = storedSetShape.entries;
const { curve: __, ...resultEntries } = resultShape.entries;

/** What a file says of a set is a `FileSet` only after this. */
const fileSetShape = v.pipe(
  v.strictObject({
    ...setEntries,
    result: v.nullable(v.strictObject({ ...resultEntries, curve: stepsShape })),
  }),
  v.check(({ exercise, definition }) => (exercise === 'own') === (definition !== undefined), 'must have a definition with own'),
  v.check(({ reps, result }) => result === null || reps.length === 0, 'must not have repetitions beside its result'),
  v.check(
    ({ reps }) => reps.every(({ number }, i) => i === 0 || number > (reps[i - 1]?.number ?? 0)),
    'must have its repetitions in order',
  ),
  v.check(({ id, edits }) => edits.every(({ setId }) => setId === id), 'must have edits of its own only'),
) satisfies v.GenericSchema<unknown, FileSet>;

export const fileSetsShape = v.array(fileSetShape);
