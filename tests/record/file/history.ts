import fc from 'fast-check';
import type { DiaryEntry } from '../../../src/record/diary-entry.ts';
import type { RepEdit } from '../../../src/record/rep-edit.ts';
import type { StoredSet } from '../../../src/record/stored-set.ts';
import { checkIn, redFlags, report } from '../../symptoms/told.ts';
import { header, idOf, momentOf, rep, result } from '../set-builders.ts';

/** Sets and entries as one machine knew them at one moment. */
export interface Copy {
  readonly sets: readonly StoredSet[];
  readonly diary: readonly DiaryEntry[];
}

/** How far one set of a history goes. */
interface Lived {
  readonly reps: number;
  readonly ends: 'finished' | 'cut-off-with-result' | 'page-closed';
  readonly edits: number;
}

const anyLived: fc.Arbitrary<Lived> = fc.record({
  reps: fc.integer({ min: 0, max: 4 }),
  ends: fc.constantFrom('finished', 'cut-off-with-result', 'page-closed'),
  edits: fc.integer({ min: 0, max: 4 }),
});

/** The changes of one set, two at each moment, as a store holds them; those on one repetition contradict one another, so that their order matters. */
const editsOf = (n: number, count: number): readonly RepEdit[] =>
  Array.from({ length: count }, (_, i): RepEdit => {
    const at = momentOf(1000 * n + Math.floor(i / 2));
    const base = { id: idOf(10_000 + 100 * n + ((i * 7) % 10)), schema: 1, setId: idOf(n), at } as const;
    if (i % 4 === 3) return { ...base, kind: 'add' };
    return { ...base, kind: i % 2 === 0 ? 'strike' : 'restore', rep: { kind: 'measured', number: 1 } };
  }).toSorted((a, b) => (`${a.at} ${a.id}` < `${b.at} ${b.id}` ? -1 : 1));

/** How a copy came by a set: not at all, while it ran, or afterwards with some of the changes. */
type Seen = {
  readonly when: 'never' | 'running' | 'broken-off' | 'ended';
  readonly reps: number;
  readonly edits: readonly boolean[];
};
const anySeen: fc.Arbitrary<Seen> = fc.record({
  when: fc.constantFrom('never', 'running', 'broken-off', 'ended'),
  reps: fc.integer({ min: 0, max: 4 }),
  edits: fc.array(fc.boolean(), { minLength: 4, maxLength: 4 }),
});

function setAsSeen(n: number, { reps, ends, edits }: Lived, seen: Seen): readonly StoredSet[] {
  if (seen.when === 'never') return [];
  const head = header({ id: idOf(n), startedAt: momentOf(1000 * n) });
  const all = Array.from({ length: reps }, (_, i) => rep(i + 1));
  if (seen.when === 'running' || seen.when === 'broken-off') {
    const state = seen.when === 'running' ? 'running' : 'interrupted';
    return [{ ...head, state, reps: all.slice(0, seen.reps), result: null, edits: [] }];
  }
  const result_ = ends === 'page-closed' ? null : result(all);
  const state = ends === 'finished' ? 'finished' : 'interrupted';
  return [{ ...head, state, reps: all, result: result_, edits: editsOf(n, edits).filter((_, i) => seen.edits[i] ?? false) }];
}

const entriesOf = (count: number): readonly DiaryEntry[] =>
  Array.from({ length: count }, (_, i) => {
    const id = idOf(50_000 + i);
    if (i % 3 === 0) return { ...report(3 + i, 9), id };
    return i % 3 === 1 ? { ...checkIn(3 + i, 8), id } : { ...redFlags(3 + i, 7), id };
  });

/** One history, and some copies that were made of parts of it at any time. */
export const copiesOfOneHistory = (count: number): fc.Arbitrary<readonly Copy[]> =>
  fc.tuple(fc.array(anyLived, { minLength: 1, maxLength: 3 }), fc.integer({ min: 0, max: 5 })).chain(([lived, told]) =>
    fc.array(
      fc
        .tuple(
          fc.array(anySeen, { minLength: lived.length, maxLength: lived.length }),
          fc.array(fc.boolean(), { minLength: told, maxLength: told }),
        )
        .map(
          ([seen, heard]): Copy => ({
            sets: lived.flatMap((each, i) => setAsSeen(i + 1, each, seen[i] as Seen)),
            diary: entriesOf(told).filter((_, i) => heard[i]),
          }),
        ),
      { minLength: count, maxLength: count },
    ),
  );
