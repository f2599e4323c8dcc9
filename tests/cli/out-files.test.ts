import { mkdir, mkdtemp, readdir, readFile, rm, symlink, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeEach, expect, test } from 'vitest';
import { checkOutFiles, writeWhole } from '../../src/cli/out-files.ts';

let folder = '';
beforeEach(async () => {
  folder = await mkdtemp(join(tmpdir(), 'evenside-out-'));
});
afterEach(() => rm(folder, { recursive: true }));
const at = (name: string): string => join(folder, name);

test('files that are new, and ones that may be written anew, have their place', async () => {
  await writeFile(at('old.json'), 'old');
  expect(await checkOutFiles([at('new.json'), at('old.json')], [at('clip.mp4')])).toEqual({ ok: true, value: null });
});

test('what is read is not written over, by its name or by a link to it', async () => {
  await writeFile(at('clip.json'), 'a recording');
  await symlink(at('clip.json'), at('link.json'));
  for (const out of [at('clip.json'), at('link.json'), join(folder, 'x', '..', 'clip.json')]) {
    expect(await checkOutFiles([out], [at('clip.json')])).toMatchObject({
      ok: false,
      error: { words: expect.stringContaining('would be written over') },
    });
  }
});

test.each([
  { outs: ['a.json', 'a.json'], says: /named for two things/ },
  { outs: ['inside'], says: /is a folder: name a file in it/ },
  { outs: ['nowhere/a.json'], says: /^There is no folder .*nowhere/ },
])('$outs: one sentence says what is wrong', async ({ outs, says }) => {
  await mkdir(at('inside'));
  const found = await checkOutFiles(outs.map(at), [at('clip.mp4')]);
  expect(found).toMatchObject({ ok: false, error: { words: expect.stringMatching(says) } });
});

test('a file is written whole, and a failed write leaves nothing', async () => {
  expect(await writeWhole(at('result.json'), '{}')).toEqual({ ok: true, value: null });
  expect(await readFile(at('result.json'), 'utf8')).toBe('{}');
  await mkdir(at('taken'));
  expect(await writeWhole(at('taken'), '{}')).toMatchObject({ ok: false, error: { words: expect.stringContaining('EISDIR') } });
  expect((await readdir(folder)).toSorted()).toEqual(['result.json', 'taken']);
});
