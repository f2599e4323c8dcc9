import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { editUnion } from '../../../src/record/file/edit-union.ts';
import { type FileSet, fileSetOf } from '../../../src/record/file/file-set.ts';
import { arrived, setUnion } from '../../../src/record/file/set-union.ts';
import type { RepEdit } from '../../../src/record/rep-edit.ts';
import { deg } from '../../../src/units.ts';
import { header, idOf, momentOf, rep, result } from '../set-builders.ts';
import { copiesOfOneHistory } from './history.ts';

type Copies = ReadonlyMap<string, FileSet>;
const copyOf = (sets: readonly FileSet[]): Copies => new Map(sets.map((set) => [set.id, arrived(set)]));

/** The union of two copies, set by set. */
function union(here: Copies, coming: Copies): Copies {
  const all = new Map(here);
  for (const [id, set] of coming) {
    const there = here.get(id);
    const joined = there ? setUnion(there, set) : null;
    if (joined?.kind === 'conflict') throw new Error(`copies of one history contradict one another in ${id}`);
    all.set(id, joined ? joined.set : set);
  }
  return all;
}
const inOrder = (copies: Copies) => [...copies.values()].toSorted((a, b) => (a.id < b.id ? -1 : 1));

describe('copies of one history', () => {
  const copies = (count: number) => copiesOfOneHistory(count).map((all) => all.map(({ sets }) => copyOf(sets.map(fileSetOf))));

  test('joined with themselves stay as they are', () => {
    fc.assert(
      fc.property(copies(1), ([a]) => {
        expect(inOrder(union(a as Copies, a as Copies))).toEqual(inOrder(a as Copies));
      }),
    );
  });
  test('come to the same whichever comes first', () => {
    fc.assert(
      fc.property(copies(2), (all) => {
        const [a, b] = all as [Copies, Copies];
        expect(inOrder(union(a, b))).toEqual(inOrder(union(b, a)));
      }),
      { numRuns: 500 },
    );
  });
  test('come to the same whichever two are joined first', () => {
    fc.assert(
      fc.property(copies(3), (all) => {
        const [a, b, c] = all as [Copies, Copies, Copies];
        expect(inOrder(union(union(a, b), c))).toEqual(inOrder(union(a, union(b, c))));
      }),
      { numRuns: 500 },
    );
  });
  test('lose nothing that one of them knew', () => {
    fc.assert(
      fc.property(copies(2), (all) => {
        const [a, b] = all as [Copies, Copies];
        const both = union(a, b);
        for (const set of [...a.values(), ...b.values()]) {
          const there = both.get(set.id);
          expect(there?.edits).toEqual(expect.arrayContaining([...set.edits]));
          if (set.result) expect(there?.result).toEqual(set.result);
          if (set.state === 'finished') expect(there?.state).toBe('finished');
        }
      }),
    );
  });
});

const running = fileSetOf({ ...header(), state: 'running', reps: [rep(1)], result: null, edits: [] });
const brokenOff = fileSetOf({ ...header(), state: 'interrupted', reps: [rep(1), rep(2)], result: null, edits: [] });
const finished = fileSetOf({ ...header(), state: 'finished', reps: [], result: result([rep(1), rep(2), rep(3)]), edits: [] });

test.each([
  ['running', running],
  ['interrupted', brokenOff],
])('a set that was %s in one copy and is finished in another ends finished either way', (_, before) => {
  expect(setUnion(before, finished)).toMatchObject({ kind: 'grown', set: finished });
  expect(setUnion(finished, arrived(before))).toMatchObject({ kind: 'same', set: finished });
});

test('a set that runs here goes on running when an older copy of it comes', () => {
  expect(setUnion(running, arrived({ ...running, reps: [] }))).toMatchObject({ kind: 'same', set: running });
});

test.each<readonly [string, FileSet, FileSet]>([
  ['another leg', finished, { ...finished, side: 'right' }],
  ['another result', finished, fileSetOf({ ...header(), state: 'finished', reps: [], result: result([rep(1)]), edits: [] })],
  ['another repetition', brokenOff, { ...brokenOff, reps: [rep(1, { peakDeg: deg(40) })] }],
])('the same set with %s is a conflict', (_, here, coming) => {
  expect(setUnion(here, coming)).toEqual({ kind: 'conflict' });
});

describe('changes by hand', () => {
  const change = (n: number, second: number, over: Partial<RepEdit> = {}): RepEdit =>
    ({ id: idOf(n), schema: 1, setId: idOf(1), at: momentOf(second), kind: 'add', ...over }) as RepEdit;

  test('of any moments, in any parts and order, twice too, come to the same', () => {
    const anyChange = fc.tuple(fc.integer({ min: 1, max: 3 }), fc.integer({ min: 0, max: 1 }));
    fc.assert(
      fc.property(fc.array(anyChange, { maxLength: 6 }), fc.infiniteStream(fc.nat()), (drawn, chance) => {
        const all = drawn.map(([second, way], i) =>
          change(1 + ((i * 5) % 7), second, way === 0 ? {} : { kind: 'strike', rep: { kind: 'measured', number: 1 } }),
        );
        const next = (below: number) => Number(chance.next().value) % below;
        const arrivals = Array.from({ length: 12 }, () => all.filter(() => next(3) === 0));
        const arrived = [...arrivals, ...all.map((each) => [each])].toSorted(() => next(3) - 1);
        const held = arrived.reduce<readonly RepEdit[]>((here, coming) => editUnion(here, coming).edits, []);
        const expected = all.toSorted((a, b) => (`${a.at} ${a.id}` < `${b.at} ${b.id}` ? -1 : 1));
        expect(held).toEqual(expected);
      }),
      { numRuns: 500 },
    );
  });
  test('made on both machines stand by their moments', () => {
    const [first, mine, theirs] = [change(1, 1), change(2, 5), change(3, 3)];
    expect(editUnion([first, mine], [first, theirs]).edits).toEqual([first, theirs, mine]);
    expect(editUnion([first, theirs], [first, mine]).edits).toEqual([first, theirs, mine]);
  });
  test('of one id that differ are counted, and what is here stays', () => {
    const [mine, theirs, fresh] = [change(1, 1), change(1, 2), change(2, 3)];
    expect(editUnion([mine], [theirs, fresh])).toEqual({ edits: [mine, fresh], conflicts: 1 });
  });
});
