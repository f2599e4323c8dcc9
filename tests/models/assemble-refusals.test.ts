import { readdir, readFile, rm, stat, truncate, writeFile } from 'node:fs/promises';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, test, vi } from 'vitest';
import { assemble, flipByte, LITE_PART, MANIFEST, makeScratch, manifest, PARTS, type Scratch, SLOW } from './assembling.ts';

vi.setConfig(SLOW);

let scratch: Scratch;
beforeAll(async () => {
  scratch = await makeScratch();
});
afterAll(() => scratch.remove());

/** One line that ends as a sentence. */
const oneSentence = (stderr: string) => stderr.endsWith('.\n') && stderr.trimEnd().split('\n').length === 1;

describe('parts that cannot be used give one sentence and no bundle', () => {
  const refused = async (name: string, args: readonly string[]) => {
    const out = scratch.path(`${name}-out`);
    const { code, stdout, stderr } = await assemble(['--out', out, ...args]);
    expect({ code, stdout, oneSentence: oneSentence(stderr) }).toEqual({ code: 1, stdout: '', oneSentence: true });
    expect(await readdir(out).catch(() => [])).toEqual([]);
    return stderr;
  };

  test('a truncated part', async () => {
    const { parts, own } = await scratch.partsWithOwn('truncated', LITE_PART);
    await truncate(own, 1000);
    const stderr = await refused('truncated', ['--parts', parts]);
    expect(stderr).toBe(
      `The pose model part ${own} is damaged (1000 bytes instead of ${(await stat(join(PARTS, LITE_PART))).size}): run npm ci again.\n`,
    );
  });

  test('a flipped byte in the last part, with all others whole', async () => {
    const { parts, own } = await scratch.partsWithOwn('flipped', 'pose_landmark_heavy.tflite');
    await flipByte(own, 20_000_000);
    const stderr = await refused('flipped', ['--parts', parts]);
    expect(stderr).toMatch(
      /^The pose model part .*heavy\.tflite is damaged \(SHA-256 \w{64} instead of \w{64}\): run npm ci again\.$/m,
    );
  });

  test('a missing part', async () => {
    const { parts, own } = await scratch.partsWithOwn('missing', 'pose_solution_packed_assets.data');
    await rm(own);
    expect(await refused('missing', ['--parts', parts])).toBe(`The pose model part ${own} is missing: run npm ci again.\n`);
  });

  test('a missing package', async () => {
    const parts = scratch.path('nowhere');
    const stderr = await refused('no-package', ['--parts', parts]);
    expect(stderr).toBe(`The pose model parts are not installed (there is no folder ${parts}): run npm ci again.\n`);
  });

  test('parts that are whole but give another bundle than the manifest describes', async () => {
    const other = scratch.path('other-manifest.json');
    const [lite] = (await manifest()).bundles;
    await writeFile(other, (await readFile(MANIFEST, 'utf8')).replace(lite?.sha256 ?? '', '0'.repeat(64)));
    const stderr = await refused('other-bundle', ['--manifest', other]);
    expect(stderr).toContain(
      `The assembled pose_lite.task is not the one models/manifest.json describes (SHA-256 ${lite?.sha256}, `,
    );
  });
});

describe('what else can be wrong gives one sentence too', () => {
  test('a manifest that is missing, no JSON, or describes other parts', async () => {
    const path = scratch.path('bad-manifest.json');
    const sentence = async () => {
      const { code, stderr } = await assemble(['--out', scratch.path('unused'), '--manifest', path]);
      expect({ code, oneSentence: oneSentence(stderr) }).toEqual({ code: 1, oneSentence: true });
      return stderr;
    };
    expect(await sentence()).toContain('cannot be used (ENOENT): restore it with git');
    await writeFile(path, '{');
    expect(await sentence()).toContain('cannot be used (it is not JSON)');
    await writeFile(path, '{ "schema": 1, "bundles": [] }');
    expect(await sentence()).toContain('cannot be used (it does not describe the bundle lite)');
    await writeFile(path, (await readFile(MANIFEST, 'utf8')).replace(LITE_PART, 'other.tflite'));
    expect(await sentence()).toContain('cannot be used (it lists other files for lite than the bundle is made of)');
  });

  test('a folder that cannot be written to', async () => {
    const file = scratch.path('a-file');
    await writeFile(file, '');
    const { code, stdout, stderr } = await assemble(['lite', '--out', join(file, 'inside')]);
    expect({ code, stdout, oneSentence: oneSentence(stderr) }).toEqual({ code: 1, stdout: '', oneSentence: true });
    expect(stderr).toContain('pose_lite.task cannot be written (ENOTDIR): ');
  });

  test('an unknown model or flag', async () => {
    expect(await assemble(['huge'])).toEqual({
      code: 2,
      stdout: '',
      stderr: 'There is no model called huge: use lite, full, heavy.\n',
    });
    for (const args of [['--nonsense'], ['--out'], ['--out', '--parts'], ['--write-manifest', 'lite']]) {
      const { code, stdout, stderr } = await assemble(args);
      expect({ args, code, stdout, oneSentence: oneSentence(stderr) }).toEqual({ args, code: 2, stdout: '', oneSentence: true });
    }
    expect((await assemble(['--nonsense'])).stderr).toMatch(/^Unknown option '--nonsense': use node models\/assemble\.mjs /);
  });

  test('a part that is no model, when the manifest is to be written', async () => {
    const { parts, own } = await scratch.partsWithOwn('no-model', LITE_PART);
    await writeFile(own, 'not a model at all');
    const path = scratch.path('unwritten.json');
    const { code, stderr } = await assemble(['--write-manifest', '--parts', parts, '--manifest', path]);
    expect(code).toBe(1);
    expect(stderr).toBe(`${own} is not a model that a bundle can hold (it lacks the identifier TFL3): run npm ci again.\n`);
    expect(await stat(path).catch(() => 'absent')).toBe('absent');
  });
});
