import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import * as cipher from '../../../src/record/lock/row-cipher.ts';
import { isSealed, openedRow, type RowForm, sealedRow } from '../../../src/record/lock/sealed-row.ts';

const KEY = { key: new Uint8Array(32).map((_, i) => i), cipher };
const shapes = { newest: 7, upgraded: (_: string, row: unknown) => ({ ...(row as object), upgraded: true }) };
const form: RowForm = { table: 'diary', readable: ['id', 'day'], givenKey: null };
const chance = (bytes: Uint8Array<ArrayBuffer>) => void crypto.getRandomValues(bytes);
const sealed = (row: object, as = form, version = 7) => sealedRow(KEY, as, row, version, chance) as Record<string, unknown>;
const opened = (row: unknown, as = form) => openedRow(KEY, as, row, shapes);

/** Rows of JSON data; a part named `sealed` or `__proto__` stands in none of ours. */
const name = fc.string().filter((each) => each !== 'sealed' && each !== '__proto__');
const plain = fc.dictionary(name, fc.jsonValue());
const row = fc.tuple(fc.uuid(), fc.string(), plain).map(([id, day, rest]) => ({ ...rest, id, day }));

test('a row comes back as it was, and twice sealed it looks different', () => {
  fc.assert(
    fc.property(row, (value) => {
      const once = sealed(value);
      expect(Object.keys(once).sort()).toEqual(['day', 'id', 'sealed']);
      expect(isSealed(once)).toBe(true);
      expect(opened(once)).toEqual(JSON.parse(JSON.stringify(value)));
      expect(sealed(value).sealed).not.toEqual(once.sealed);
    }),
  );
});

test('a row that was never sealed goes through, and so does what is not there', () => {
  expect(opened({ id: 'a', day: 'b', note: 'c' })).toEqual({ id: 'a', day: 'b', note: 'c' });
  expect(opened(undefined)).toBeUndefined();
});

describe('a row does not open', () => {
  const one = { id: 'one', day: '2026-05-01', note: 'my heel' };
  const other = { id: 'other', day: '2026-05-02', note: 'another' };

  test('under the name of another', () => {
    const swapped = { ...sealed(other), id: 'one', day: '2026-05-01' };
    expect(opened(swapped)).toBe(swapped);
    const movedDay = { ...sealed(one), day: '2026-05-02' };
    expect(opened(movedDay)).toBe(movedDay);
  });

  test('in another table', () => {
    const moved = sealed(one);
    expect(opened(moved, { ...form, table: 'sets' })).toBe(moved);
  });

  test('with one readable part more or less', () => {
    const { day: _, ...less } = sealed(one);
    expect(opened(less)).toBe(less);
    const more = { ...sealed(one), note: 'forged' };
    expect(opened(more)).toBe(more);
  });

  test('with any bit of it flipped, or cut short', () => {
    fc.assert(
      fc.property(fc.nat(), fc.nat({ max: 7 }), (at, bit) => {
        const whole = sealed(one);
        const bytes = new Uint8Array(whole.sealed as Uint8Array);
        bytes[at % bytes.length] = (bytes[at % bytes.length] ?? 0) ^ (1 << bit);
        const flipped = { ...whole, sealed: bytes };
        expect(opened(flipped)).toBe(flipped);
        const short = { ...whole, sealed: (whole.sealed as Uint8Array).subarray(0, at % bytes.length) };
        expect(opened(short)).toBe(short);
      }),
    );
  });

  test('with another key', () => {
    const whole = sealed(one);
    expect(openedRow({ key: new Uint8Array(32), cipher }, form, whole, shapes)).toBe(whole);
  });

  test('and is not sealed once more when it is written again', () => {
    const damaged = { ...sealed(one), day: '2026-05-02' };
    expect(sealed(damaged)).toBe(damaged);
  });
});

test('a key that the database gives afterwards is not bound; everything else readable is', () => {
  const edits: RowForm = { table: 'edits', readable: ['seq', 'id'], givenKey: 'seq' };
  const added = { ...sealed({ id: 'a', note: 'n' }, edits), seq: 4 };
  expect(opened(added, edits)).toEqual({ seq: 4, id: 'a', note: 'n' });
  expect(isSealed(opened({ ...added, id: 'b' }, edits))).toBe(true);
});

test('a row of an older shape comes out in the shape of now', () => {
  expect(opened(sealed({ id: 'a', day: 'b' }, form, 6))).toEqual({ id: 'a', day: 'b', upgraded: true });
  expect(opened(sealed({ id: 'a', day: 'b' }, form, 7))).toEqual({ id: 'a', day: 'b' });
});
