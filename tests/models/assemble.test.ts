import { createHash } from 'node:crypto';
import { copyFile, readdir, readFile, stat } from 'node:fs/promises';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, test, vi } from 'vitest';
import { ensureModels } from '../../models/assemble.mjs';
import { assemble, flipByte, LITE_PART, MANIFEST, makeScratch, manifest, PARTS, ROOT, type Scratch, SLOW } from './assembling.ts';
import { BUFFER, MODEL, metadataIn, normalisationIn, rootOf } from './flatbuffer-view.ts';
import { zipEntries } from './zip-view.ts';

vi.setConfig(SLOW);

const FILES = ['pose_full.task', 'pose_heavy.task', 'pose_lite.task'];

let scratch: Scratch;
let first = '';
beforeAll(async () => {
  scratch = await makeScratch();
  first = await scratch.folder('first');
  expect(await assemble(['--out', first], { TZ: 'Pacific/Kiritimati' })).toMatchObject({ code: 0, stderr: '' });
});
afterAll(() => scratch.remove());

const listed = (file: string, data: Uint8Array) => ({
  file,
  bytes: data.length,
  sha256: createHash('sha256').update(data).digest('hex'),
});

describe('bundles from the installed parts', () => {
  test('are as the manifest describes them, and nothing lies beside them', async () => {
    expect((await readdir(first)).sort()).toEqual(FILES);
    for (const { file, bytes, sha256 } of (await manifest()).bundles) {
      expect(listed(file, await readFile(join(first, file)))).toEqual({ file, bytes, sha256 });
    }
  });

  test('are the same bytes when made again, in another time zone', async () => {
    const second = await scratch.folder('second');
    const made = await assemble(['--out', second], { TZ: 'America/New_York' });
    expect(made).toMatchObject({ code: 0, stderr: '' });
    expect(made.stdout.trimEnd().split('\n')).toHaveLength(FILES.length);
    for (const file of FILES) {
      expect((await readFile(join(second, file))).equals(await readFile(join(first, file)))).toBe(true);
    }
  });

  test('hold the parts whole and aligned, stored, behind metadata that says how to normalise', async () => {
    for (const { file, parts } of (await manifest()).bundles) {
      const entries = zipEntries(await readFile(join(first, file)));
      expect(entries.map((entry) => entry.name)).toEqual(parts.map((part) => part.entry));
      for (const [i, entry] of entries.entries()) {
        const part = await readFile(join(PARTS, parts[i]?.file ?? ''));
        const base = entry.data.length - part.length;
        expect([entry.method, entry.dataAt % 16, base % 16]).toEqual([0, 0, 0]);
        expect(Buffer.from(entry.data.subarray(base)).equals(part)).toBe(true);
        const { at, data } = metadataIn(entry.data);
        expect(at % 16).toBe(0);
        expect(normalisationIn(data)).toEqual(i === 0 ? { mean: [127.5], std: [127.5] } : { mean: [0], std: [255] });
      }
    }
  });

  test('lead to every buffer of the parts', async () => {
    const entries = zipEntries(await readFile(join(first, 'pose_lite.task')));
    const places = (model: Uint8Array) =>
      rootOf(model)
        .tables(MODEL.buffers)
        .map((b) => b.bytes(BUFFER.data)?.at);
    const part = await readFile(join(PARTS, LITE_PART));
    const model = entries[1]?.data ?? new Uint8Array();
    const base = model.length - part.length;
    const expected = places(part).map((at) => (at === undefined ? undefined : base + at));
    expect(expected.length).toBeGreaterThan(100);
    expect(places(model).slice(0, -1)).toEqual(expected);
  });
});

describe('bundles that are there already', () => {
  test('are left alone without a word, even when the parts are gone', async () => {
    const before = await Promise.all(FILES.map((file) => stat(join(first, file))));
    const again = await assemble(['--out', first, '--parts', scratch.path('nowhere')]);
    const after = await Promise.all(FILES.map((file) => stat(join(first, file))));
    expect(again).toEqual({ code: 0, stdout: '', stderr: '' });
    expect(after.map((s) => [s.ino, s.mtimeMs])).toEqual(before.map((s) => [s.ino, s.mtimeMs]));
  });

  test('are made anew when they are damaged, and only those', async () => {
    const out = await scratch.folder('damaged-bundle');
    await copyFile(join(first, 'pose_lite.task'), join(out, 'pose_lite.task'));
    await copyFile(join(first, 'pose_full.task'), join(out, 'pose_full.task'));
    await flipByte(join(out, 'pose_lite.task'), 5000);
    const lines: string[] = [];
    const made = await ensureModels({ root: ROOT, names: ['full', 'lite'], out, log: (line) => lines.push(line) });
    expect(made).toEqual({ ok: true, value: ['lite'] });
    expect(lines).toEqual([`made ${join(out, 'pose_lite.task')} (${(await stat(join(first, 'pose_lite.task'))).size} bytes)`]);
    expect((await readFile(join(out, 'pose_lite.task'))).equals(await readFile(join(first, 'pose_lite.task')))).toBe(true);
    expect((await readdir(out)).sort()).toEqual(['pose_full.task', 'pose_lite.task']);
  });
});

describe('--write-manifest', () => {
  test('writes the committed manifest, byte for byte, and no bundle', async () => {
    const out = await scratch.folder('remeasured');
    const path = join(out, 'manifest.json');
    expect(await assemble(['--write-manifest', '--manifest', path])).toEqual({ code: 0, stdout: `wrote ${path}\n`, stderr: '' });
    expect(await readFile(path, 'utf8')).toBe(await readFile(MANIFEST, 'utf8'));
    expect(await readdir(out)).toEqual(['manifest.json']);
  });
});
