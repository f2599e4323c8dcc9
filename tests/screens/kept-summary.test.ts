import { describe, expect, test } from 'vitest';
import type { RepEdit } from '../../src/record/rep-edit.ts';
import { keptSummary } from '../../src/screens/result/kept-summary.ts';
import { deg } from '../../src/units.ts';
import { aRep, aSet } from './fake-sets.ts';

const struck = (number: number): RepEdit => ({
  id: `strike-${number}`,
  schema: 1,
  setId: 'set-1',
  at: '2026-03-01T10:05:00.000Z',
  kind: 'strike',
  rep: { kind: 'measured', number },
});

const reps = [
  aRep(1, { rangeDeg: deg(10), uncertaintyDeg: deg(1) }),
  aRep(2, { rangeDeg: deg(20), uncertaintyDeg: deg(2) }),
  aRep(3, { rangeDeg: deg(40), uncertaintyDeg: deg(4) }),
  aRep(4, { rangeDeg: deg(3), complete: false }),
];

describe('how far the counted repetitions went', () => {
  test('it is the middle of the complete ones, whatever is done to the small ones', () => {
    expect(keptSummary(aSet(reps))).toEqual({ medianRangeDeg: 20, uncertaintyDeg: 2, medianUpMs: null });
    expect(keptSummary(aSet(reps, { edits: [struck(4)] }))).toEqual({ medianRangeDeg: 20, uncertaintyDeg: 2, medianUpMs: null });
  });

  test('a struck repetition leaves the middle of the others', () => {
    expect(keptSummary(aSet(reps, { edits: [struck(3)] }))).toEqual({
      medianRangeDeg: 15,
      uncertaintyDeg: 1.5,
      medianUpMs: null,
    });
  });

  test('an interrupted set without a result has the middle of its repetitions', () => {
    expect(keptSummary(aSet(reps, { result: null, state: 'interrupted' }))).toEqual({
      medianRangeDeg: 20,
      uncertaintyDeg: 2,
      medianUpMs: null,
    });
  });

  test('without a counted repetition there is none', () => {
    expect(keptSummary(aSet([aRep(1, { complete: false })]))).toBeNull();
    expect(keptSummary(aSet([aRep(1)], { edits: [struck(1)] }))).toBeNull();
  });
});
