import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { editedCount, editedReps, type RepEdit, type RepRef } from '../../src/record/rep-edit.ts';
import { edit, rep } from './set-builders.ts';

const measured = (number: number): RepRef => ({ kind: 'measured', number });
const reps = [rep(1), rep(2, { complete: false, flags: ['partial'] }), rep(3)];

describe('the edited count', () => {
  test('is that of the complete repetitions when nothing was edited', () => {
    expect(editedCount({ reps, edits: [] })).toBe(2);
  });

  test('leaves out a struck repetition and takes a restored one back in', () => {
    const strike = edit({ kind: 'strike', rep: measured(3) });
    expect(editedCount({ reps, edits: [strike] })).toBe(1);
    expect(editedCount({ reps, edits: [strike, edit({ kind: 'restore', rep: measured(3) })] })).toBe(2);
  });

  test('counts a repetition added by hand, until it is struck', () => {
    const add = edit({ kind: 'add' });
    expect(editedCount({ reps, edits: [add] })).toBe(3);
    expect(editedCount({ reps, edits: [add, edit({ kind: 'strike', rep: { kind: 'added', id: add.id } })] })).toBe(2);
  });

  test('does not change when a partial movement is struck or restored', () => {
    expect(editedCount({ reps, edits: [edit({ kind: 'strike', rep: measured(2) })] })).toBe(2);
    expect(editedCount({ reps, edits: [edit({ kind: 'restore', rep: measured(2) })] })).toBe(2);
  });

  test('after any edits lies between nothing and all complete and added ones, and the last word on each repetition decides', () => {
    const anEdit = fc.oneof(
      fc.record({ kind: fc.constantFrom('strike' as const, 'restore' as const), number: fc.integer({ min: 1, max: 3 }) }),
      fc.constant({ kind: 'add' as const }),
    );
    fc.assert(
      fc.property(fc.array(anEdit, { maxLength: 12 }), (changes) => {
        const edits: readonly RepEdit[] = changes.map((change) =>
          edit('number' in change ? { kind: change.kind, rep: measured(change.number) } : change),
        );
        const before = structuredClone({ reps, edits });
        const lastWord = (number: number) => changes.findLast((change) => 'number' in change && change.number === number)?.kind;
        const complete = [1, 3].filter((number) => lastWord(number) !== 'strike').length;
        const added = changes.filter(({ kind }) => kind === 'add').length;
        expect(editedCount({ reps, edits })).toBe(complete + added);
        expect({ reps, edits }).toEqual(before);
      }),
    );
  });
});

test('edited repetitions are all there, struck ones marked, the added last', () => {
  const add = { ...edit({ kind: 'add' }), note: 'hidden by the dog' };
  const edits = [add, edit({ kind: 'strike', rep: measured(1) })];
  expect(editedReps({ reps, edits }).map((each) => [each.kind, each.struck])).toEqual([
    ['measured', true],
    ['measured', false],
    ['measured', false],
    ['added', false],
  ]);
  expect(editedReps({ reps, edits }).at(-1)).toMatchObject({ at: add.at, note: 'hidden by the dog' });
});
