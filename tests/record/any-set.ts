import fc from 'fast-check';
import type { MeasuredRep, SetResult } from '../../src/measure/set-result.ts';
import type { RepEdit } from '../../src/record/rep-edit.ts';
import type { StoredSet } from '../../src/record/stored-set.ts';
import { type Deg, deg, type Ms, ms } from '../../src/units.ts';
import { aGlide } from './glide-builders.ts';
import { TOWEL_SCRUNCH } from './own-definitions.ts';
import { header, idOf, momentOf, rep, result } from './set-builders.ts';

/** Texts that a table or a spreadsheet may stumble over. */
export const anyText: fc.Arbitrary<string> = fc.oneof(
  fc.string({ unit: fc.constantFrom('a', ',', '"', '\r', '\n', '\t', ' ', '=', '+', '-', '@', "'", 'ñ', ';', '＝', '\u00a0') }),
  fc.constantFrom('=HYPERLINK("x")', "=cmd|'/c calc'!A1", '-1', '+1', '@SUM(A1)', ' =1', '\t=1', '\ufeff=1', '１', 'true'),
  fc.string({ unit: 'grapheme', maxLength: 20 }),
);

const finite = fc.oneof(
  fc.double({ min: -1000, max: 1000, noNaN: true }),
  fc.double({ noDefaultInfinity: true, noNaN: true }),
  fc.constantFrom(0, -0, 0.005, -0.004, 1e21, -1e308),
);
const anyDeg: fc.Arbitrary<Deg> = finite.map(deg);
const anyMs: fc.Arbitrary<Ms> = finite.map(ms);
const size = finite.map((value) => deg(Math.abs(value)));

const anyRep: fc.Arbitrary<Omit<MeasuredRep, 'number'>> = fc
  .record({
    startMs: anyMs,
    peakMs: anyMs,
    endMs: anyMs,
    startDeg: anyDeg,
    peakDeg: anyDeg,
    rangeDeg: anyDeg,
    holdMs: anyMs,
    complete: fc.boolean(),
    flags: fc.subarray<MeasuredRep['flags'][number]>(['partial', 'knee-bent', 'past-onset']),
    uncertaintyDeg: size,
    footDeg: fc.option(anyDeg),
    footUncertaintyDeg: fc.option(size),
    upMs: fc.option(anyMs),
    sankAfterMs: fc.option(anyMs),
  })
  .map((over) => rep(1, over));

const anyCurve: fc.Arbitrary<SetResult['curve']> = fc
  .array(fc.tuple(anyMs, fc.option(anyDeg)), { maxLength: 8 })
  .map((points) => ({ tMs: points.map(([t]) => t), angleDeg: points.map(([, angle]) => angle) }));

/** As short and as plain as the name of an exercise must be. */
const anyName = anyText
  .map((text) =>
    text
      .replace(/\p{Cc}/gu, '')
      .trim()
      .slice(0, 60)
      .trim(),
  )
  .filter((name) => name !== '');

const editsOf = (n: number, notes: readonly (string | null)[]): readonly RepEdit[] =>
  notes.map((note, i) => ({
    id: idOf(1000 * (n + 1) + i),
    schema: 1,
    setId: idOf(n),
    at: momentOf(i),
    ...(note === null ? {} : { note }),
    ...(i % 2 === 0 ? { kind: 'add' } : { kind: 'strike', rep: { kind: 'measured', number: 1 } }),
  }));

/** A set as the store may hold it, whoever wrote it. @param n says which one it is */
const anySet = (n: number): fc.Arbitrary<StoredSet> =>
  fc
    .record({
      kind: fc.constantFrom('foot-tap' as const, 'nerve-glide' as const, 'own' as const),
      name: anyName,
      fileName: fc.option(anyText),
      reps: fc.array(anyRep, { maxLength: 4 }),
      curve: fc.option(anyCurve),
      uncertaintyDeg: fc.option(size),
      notes: fc.array(fc.option(anyText), { maxLength: 3 }),
      startedAt: fc.integer({ min: 0, max: 4e6 }).map(momentOf),
    })
    .map(({ kind, name, fileName, curve, uncertaintyDeg, notes, startedAt, ...rest }): StoredSet => {
      const reps = rest.reps.map((each, i) => ({ ...each, number: i + 1 }));
      const summary = uncertaintyDeg === null ? null : { medianPeakDeg: deg(1), medianRangeDeg: deg(1), uncertaintyDeg };
      const glide = kind === 'nerve-glide' ? aGlide('ST') : null;
      return {
        ...header({ id: idOf(n), startedAt, exercise: kind, source: 'file', ...(fileName === null ? {} : { fileName }) }),
        ...(kind === 'own' ? { definition: { ...TOWEL_SCRUNCH, name } } : {}),
        state: curve ? 'finished' : 'interrupted',
        reps,
        result: curve && { ...result(reps), exercise: kind, summary, glide, curve },
        edits: editsOf(n, notes),
      };
    });

/** Some sets of one person, with ids of their own. */
export const anySets: fc.Arbitrary<readonly StoredSet[]> = fc
  .integer({ min: 0, max: 4 })
  .chain((count) => fc.tuple(...Array.from({ length: count }, (_, n) => anySet(n + 1))));
