import { createDecipheriv, createHash, pbkdf2Sync } from 'node:crypto';
import { readFileSync } from 'node:fs';
import { Ajv2020 } from 'ajv/dist/2020.js';
import fc from 'fast-check';
import { strFromU8, strToU8, unzipSync, zipSync } from 'fflate';
import { describe, expect, test } from 'vitest';
import { curveOf, stepsOf } from '../../../src/record/file/curve-steps.ts';
import { type FileSet, fileSetOf, resultOf } from '../../../src/record/file/file-set.ts';
import { readRecord } from '../../../src/record/file/read-record.ts';
import { RECORD_LIMITS } from '../../../src/record/file/record-limits.ts';
import { writeRecord } from '../../../src/record/file/write-record.ts';
import { deg, ms } from '../../../src/units.ts';
import { momentOf } from '../set-builders.ts';
import { wentWell } from '../went-well.ts';
import { PASSPHRASE, recordOf, someEntries, someSets, WHOSE, written } from './written-record.ts';

type Files = Record<string, Uint8Array>;
const zipped = (files: Files) => zipSync(files) as Uint8Array<ArrayBuffer>;
const read = (bytes: Uint8Array<ArrayBuffer>, passphrase: string | null = null) => readRecord(bytes, passphrase, crypto);
const plainFiles = async () => unzipSync(await written(someSets(), someEntries()));
const textOf = (files: Files, name: string) => strFromU8(files[name] as Uint8Array);

/** The record with a part changed, its length and checksum in the manifest put right. */
async function withPart(name: string, change: (text: string) => string): Promise<Uint8Array<ArrayBuffer>> {
  const files = await plainFiles();
  const sum = (bytes: Uint8Array) => createHash('sha256').update(bytes).digest('hex');
  const before = files[name] as Uint8Array;
  const after = strToU8(change(strFromU8(before)));
  const manifest = textOf(files, 'manifest.json')
    .replace(sum(before), sum(after))
    .replace(`"bytes": ${before.length},`, `"bytes": ${after.length},`);
  return zipped({ ...files, 'manifest.json': strToU8(manifest), [name]: after });
}

describe('a record that is written', () => {
  test('is read back as it was, curves to the hundredth of a degree', async () => {
    const [sets, diary] = [someSets(), someEntries()];
    const record = await recordOf(sets, diary);
    expect([...record.sets()].flat()).toEqual(sets.map(fileSetOf));
    expect(record.diary).toEqual(diary);
    expect(record.manifest).toMatchObject({ createdAt: momentOf(500), person: WHOSE, counts: { sets: 2, edits: 2, entries: 3 } });
    expect(record.span).toEqual({ from: momentOf(1), to: diary[1]?.at });
    const [first] = [...record.sets()].flat() as [FileSet];
    expect(first.result && resultOf(first.result).curve).toEqual({ tMs: [0, 33.3, 66.7], angleDeg: [1, null, 2.5] });
  });

  test('has a manifest that the published schema allows, and says who it is of only by a random number', async () => {
    const schema = JSON.parse(readFileSync('docs/record.schema.json', 'utf8'));
    const allows = new Ajv2020({ strict: true, strictTypes: false, formats: {} }).compile(schema);
    expect(allows(JSON.parse(textOf(await plainFiles(), 'manifest.json'))) || allows.errors).toBe(true);
    const sealed = unzipSync(await written(someSets(), [], { passphrase: PASSPHRASE }));
    expect(allows(JSON.parse(textOf(sealed, 'header.json'))) || allows.errors).toBe(true);
    expect(allows({ evenside: 'record', version: 1 })).toBe(false);
  });

  test('with a passphrase can be opened by another program from its published description', async () => {
    const diary = someEntries();
    const bytes = await written(someSets(), diary, { passphrase: PASSPHRASE });
    const outer = unzipSync(bytes);
    const head = outer['header.json'] as Uint8Array;
    const { rounds, salt, iv } = JSON.parse(strFromU8(head)).sealed;
    const key = pbkdf2Sync(PASSPHRASE, Buffer.from(salt, 'base64'), rounds, 32, 'sha256');
    const sealed = outer['sealed.bin'] as Uint8Array;
    const decipher = createDecipheriv('aes-256-gcm', key, Buffer.from(iv, 'base64'));
    decipher.setAAD(head).setAuthTag(sealed.subarray(-16));
    const inner = unzipSync(Buffer.concat([decipher.update(sealed.subarray(0, -16)), decipher.final()]));
    expect(JSON.parse(textOf(inner, 'diary/0001.json'))).toEqual(diary);
    expect(wentWell(await read(bytes, PASSPHRASE)).manifest.counts.sets).toBe(2);
  });

  test('without a word about rounds is sealed under at least 600,000', async () => {
    const bytes = await writeRecord({ createdAt: momentOf(1), person: WHOSE, diary: [], pages: [] }, PASSPHRASE, crypto);
    expect(JSON.parse(textOf(unzipSync(bytes), 'header.json')).sealed.rounds).toBeGreaterThanOrEqual(600_000);
  });
});

test('curves written again give the same steps, whatever they were', () => {
  const number = fc.double({ min: -1e6, max: 1e6, noNaN: true });
  const points = fc.array(fc.tuple(number, fc.option(number)), { maxLength: 40 });
  fc.assert(
    fc.property(points, (all) => {
      const curve = { tMs: all.map(([t]) => ms(t)), angleDeg: all.map(([, a]) => (a === null ? null : deg(a))) };
      const steps = stepsOf(curve);
      const back = curveOf(steps);
      expect(stepsOf(back)).toEqual(steps);
      back.tMs.forEach((t, i) => {
        expect(Math.abs(t - (curve.tMs[i] as number))).toBeLessThan(0.0501);
        const [was, is] = [curve.angleDeg[i] ?? null, back.angleDeg[i] ?? null];
        if (was === null || is === null) expect(is).toBe(was);
        else expect(Math.abs(is - was)).toBeLessThan(0.00501);
      });
    }),
  );
});

describe('a file is refused', () => {
  const error = async (bytes: Uint8Array<ArrayBuffer>, passphrase: string | null = null) => {
    const found = await read(bytes, passphrase);
    return found.ok ? null : found.error;
  };

  test('when it is something else', async () => {
    expect(await error(strToU8('Dear colleague') as Uint8Array<ArrayBuffer>)).toEqual({ kind: 'not-a-record' });
    expect(await error(zipped({ 'letter.txt': strToU8('Dear colleague') }))).toEqual({ kind: 'not-a-record' });
    expect(await error(zipped({ 'manifest.json': strToU8('{"name":"another app"}') }))).toEqual({ kind: 'not-a-record' });
  });
  test('when it was cut short, at whatever byte', async () => {
    const bytes = await written(someSets(), someEntries());
    for (let length = 2; length < bytes.length; length += 41) {
      expect(await error(bytes.slice(0, length))).toMatchObject({ kind: 'record-damaged' });
    }
  });
  test('when a part was changed, or is missing', async () => {
    const files = await plainFiles();
    const text = textOf(files, 'diary/0001.json').replace('"intensity":0', '"intensity":1');
    expect(await error(zipped({ ...files, 'diary/0001.json': strToU8(text) }))).toEqual({
      kind: 'record-damaged',
      how: 'checksum',
    });
    const { 'diary/0001.json': _, ...less } = files;
    expect(await error(zipped(less))).toEqual({ kind: 'record-damaged', how: 'part-missing' });
  });
  test('when a newer program wrote it', async () => {
    const files = await plainFiles();
    const manifest = textOf(files, 'manifest.json').replace('"version": 1', '"version": 3');
    expect(await error(zipped({ ...files, 'manifest.json': strToU8(manifest) }))).toEqual({
      kind: 'record-newer',
      version: 3,
      known: 2,
    });
  });
  test.each([
    ['a field that is none', 'sets/0001.json', '"side":"left"', '"side":"front"', 'sets/0001.json[0].side'],
    ['a field too many', 'diary/0001.json', '"kind":"symptoms"', '"kind":"symptoms","more":1', 'diary/0001.json[0].more'],
    ['steps that are no whole numbers', 'sets/0001.json', '"t":[0,', '"t":[0.5,', 'sets/0001.json[0].result.curve.t'],
    ['steps beyond all bounds', 'sets/0001.json', '"t":[0,', '"t":[1e300,', 'sets/0001.json[0].result.curve.t'],
  ])('when it has %s', async (_, name, from, to, where) => {
    expect(await error(await withPart(name, (text) => text.replace(from, to)))).toMatchObject({ kind: 'record-wrong', where });
  });
  test('when an id is there twice', async () => {
    const [first] = someSets();
    if (!first) throw new Error('someSets requires a set');
    expect(await error(await written([first, first], []))).toMatchObject({ kind: 'record-wrong', where: 'sets/0001.json[1].id' });
  });
  test('when it goes deeper than any record', async () => {
    const deep = await withPart('diary/0001.json', () => `${'['.repeat(50_000)}${']'.repeat(50_000)}`);
    expect(await error(deep)).toMatchObject({ kind: 'record-too-large', what: 'levels' });
  });
  test('when a part would be too large unpacked, whatever its directory says', async () => {
    const files = await plainFiles();
    const huge = new Uint8Array(RECORD_LIMITS.partBytes + 1).fill(0x20);
    const bomb = zipped({ ...files, 'manifest.json': huge });
    expect(await error(bomb)).toMatchObject({ kind: 'record-too-large', what: 'partBytes' });
    // The same with a directory that says that it is small.
    const lying = new Uint8Array(bomb);
    const view = new DataView(lying.buffer);
    for (let at = 0; at + 28 < lying.length; at += 1) {
      if (view.getUint32(at, true) === 0x02014b50 && view.getUint32(at + 24, true) === huge.length)
        view.setUint32(at + 24, 1000, true);
    }
    expect(await error(lying)).toEqual({ kind: 'record-damaged', how: 'checksum' });
  });
  test('when its passphrase is missing or another one, or its header was changed', async () => {
    const bytes = await written(someSets(), [], { passphrase: PASSPHRASE });
    expect(await error(bytes)).toEqual({ kind: 'record-sealed' });
    expect(await error(bytes, 'four red kites')).toEqual({ kind: 'record-passphrase' });
    const files = unzipSync(bytes);
    const header = textOf(files, 'header.json').replace('"rounds":1000', '"rounds": 1000');
    expect(await error(zipped({ ...files, 'header.json': strToU8(header) }), PASSPHRASE)).toEqual({ kind: 'record-passphrase' });
    const sealed = new Uint8Array(files['sealed.bin'] as Uint8Array);
    sealed[40] = (sealed[40] ?? 0) ^ 1;
    expect(await error(zipped({ ...files, 'sealed.bin': sealed }), PASSPHRASE)).toEqual({
      kind: 'record-damaged',
      how: 'checksum',
    });
  });
});
