/** Whatever a record holds, what goes out of it can be read by other programs: CSV by RFC 4180 without formulas, JSON by the published schema. */
import { readFileSync } from 'node:fs';
import { Ajv2020 } from 'ajv/dist/2020.js';
import fc from 'fast-check';
import * as v from 'valibot';
import { expect, test } from 'vitest';
import { angleFile, angleTable } from '../../src/record/angle-file.ts';
import type { DiaryEntry } from '../../src/record/diary-entry.ts';
import { editedReps } from '../../src/record/rep-edit.ts';
import { repsTable } from '../../src/record/reps-table.ts';
import { setsTable } from '../../src/record/sets-table.ts';
import type { StoredSet } from '../../src/record/stored-set.ts';
import { storedSetShape } from '../../src/record/stored-set-shape.ts';
import { entry } from '../symptoms/told.ts';
import { anySets, anyText } from './any-set.ts';
import { rfc4180 } from './rfc4180.ts';
import { idOf } from './set-builders.ts';

type Row = Readonly<Record<string, string>>;

/** The rows by the names of their columns; each has a cell for each, and none is a formula. */
function rowsOf(csv: string): readonly Row[] {
  const [names = [], ...lines] = rfc4180(csv);
  expect(new Set(names).size).toBe(names.length);
  return lines.map((cells) => {
    expect(cells).toHaveLength(names.length);
    for (const cell of cells) {
      // As spreadsheets do, they look past spaces; a number may begin with its sign.
      if (/^[\s\ufeff]*[=+\-@＝＋－＠]/u.test(cell)) expect(cell).toMatch(/^-?\d+(\.\d+)?(e[+-]\d+)?$/);
      expect(cell).not.toMatch(/^[\t\r\n]|NaN|Infinity|undefined|\[object/);
    }
    return Object.fromEntries(names.map((name, i) => [name, cells[i] ?? '']));
  });
}

/** A text as it stands in a cell: as it was, or with the apostrophe before what would be a formula. */
const isText = (cell: string | undefined, text: string | undefined) => expect([text ?? '', `'${text}`]).toContain(cell);
/** A number to so many places as it stands in a cell. */
function isNumber(cell: string | undefined, value: number | null | undefined, places: number) {
  if (value === null || value === undefined) return expect(cell).toBe('');
  expect(Math.abs(Number(cell) - value)).toBeLessThanOrEqual(0.5 * 10 ** -places + Math.abs(value) * 1e-12);
}

const handSet = (n: number): DiaryEntry => ({
  ...entry(2, 14),
  id: idOf(500 + n),
  kind: 'hand-set',
  exercise: 'foot-tap',
  side: 'right',
  itemId: null,
  reps: n,
  counted: 'by-hand',
});

const byStart = (sets: readonly StoredSet[]) =>
  sets.toSorted((a, b) => (a.startedAt < b.startedAt ? -1 : Number(a.startedAt > b.startedAt)));

test('what is put together here are sets that can be stored', () => {
  fc.assert(fc.property(anySets, (sets) => sets.every((set) => v.is(storedSetShape, set))));
});

test('the table of sets reads back: each set a row, its texts and numbers as they were', () => {
  fc.assert(
    fc.property(anySets, fc.nat(2), (sets, hands) => {
      const rows = rowsOf(
        setsTable(
          sets,
          Array.from({ length: hands }, (_, n) => handSet(n)),
          'Europe/Madrid',
        ),
      );
      expect(rows).toHaveLength(sets.length + hands);
      for (const [i, set] of byStart(sets).entries()) {
        expect(rows[i]).toMatchObject({ set_id: set.id, started_at_utc: set.startedAt, exercise: set.exercise });
        isText(rows[i]?.file_name, set.fileName);
        isText(rows[i]?.own_exercise_name, set.definition?.name);
        expect(rows[i]?.measured_count).toBe(String(set.reps.filter(({ complete }) => complete).length));
      }
    }),
  );
});

test('the table of repetitions reads back, whatever was measured, and what was added by hand with its note', () => {
  fc.assert(
    fc.property(anySets, (sets) => {
      const rows = rowsOf(repsTable(sets, [], 'UTC'));
      const all = byStart(sets).flatMap((set) => editedReps(set).map((each) => ({ set, each })));
      expect(rows).toHaveLength(all.length);
      for (const [i, { set, each }] of all.entries()) {
        const row = rows[i];
        expect([row?.set_id, row?.rep_kind, row?.struck_by_hand]).toEqual([set.id, each.kind, String(each.struck)]);
        if (each.kind === 'added') isText(row?.note, each.note ?? '');
        else {
          isNumber(row?.start_deg, each.rep.startDeg, 2);
          isNumber(row?.foot_deg, each.rep.footDeg, 2);
          isNumber(row?.peak_ms, each.rep.peakMs, 0);
          isNumber(row?.up_ms, each.rep.upMs, 0);
          expect(row?.flags).toBe(each.rep.flags.join(' '));
        }
      }
    }),
  );
});

test('the angle through a set reads back as CSV, and as JSON is what the published schema says', () => {
  const schemaOf = (name: string) => JSON.parse(readFileSync(new URL(`../../docs/${name}`, import.meta.url), 'utf8'));
  const ajv = new Ajv2020({ strict: true }).addSchema({ ...schemaOf('exercise.schema.json'), $id: 'exercise.schema.json' });
  const allows = ajv.compile(schemaOf('angle-series.schema.json'));
  fc.assert(
    fc.property(anySets, (sets) => {
      for (const { result, definition = null, startedAt } of sets) {
        if (!result) continue;
        const { curve } = result;
        const of = { result, definition, startedAt };
        const file = JSON.parse(JSON.stringify(angleFile(of)));
        expect(allows(file) || allows.errors).toBe(true);
        const rows = rowsOf(angleTable(of));
        expect([rows.length, file.tMs.length, file.angleDeg.length]).toEqual(Array(3).fill(curve.tMs.length));
        for (const [i, row] of rows.entries()) {
          isNumber(row.t_ms, curve.tMs[i], 0);
          isNumber(row.angle_deg, curve.angleDeg[i], 2);
          isNumber(String(file.angleDeg[i] ?? ''), curve.angleDeg[i], 2);
        }
      }
    }),
  );
});

test.each(['"open', 'a"b', 'a\nb', 'a\rb', '"a"b', 'a,"'])('the reader of these tests refuses what is no RFC 4180: %j', (csv) => {
  expect(() => rfc4180(csv)).toThrow(/at character/);
});

test('the reader of these tests reads what RFC 4180 shows', () => {
  // Section 2, the examples of 1, 5, 6 and 7.
  expect(rfc4180('aaa,bbb,ccc\r\nzzz,yyy,xxx')).toEqual([
    ['aaa', 'bbb', 'ccc'],
    ['zzz', 'yyy', 'xxx'],
  ]);
  expect(rfc4180('"aaa","b\r\nbb","ccc"\r\nzzz,yyy,xxx')[0]).toEqual(['aaa', 'b\r\nbb', 'ccc']);
  expect(rfc4180('"aaa","b""bb","ccc"')).toEqual([['aaa', 'b"bb', 'ccc']]);
  fc.assert(
    fc.property(anyText, (text) => {
      expect(rfc4180(`"${text.replaceAll('"', '""')}",`)).toEqual([[text, '']]);
    }),
  );
});
