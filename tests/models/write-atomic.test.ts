import { mkdir, mkdtemp, readdir, readFile, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeEach, expect, test } from 'vitest';
import { writeAtomic } from '../../models/write-atomic.mjs';

let scratch = '';
beforeEach(async () => {
  scratch = await mkdtemp(join(tmpdir(), 'evenside-write-'));
});
afterEach(() => rm(scratch, { recursive: true, force: true }));

test('the file replaces the old one, in a folder made for it, with nothing beside it', async () => {
  const path = join(scratch, 'new/pose.task');
  expect(await writeAtomic(path, 'old')).toEqual({ ok: true, value: undefined });
  expect(await writeAtomic(path, Uint8Array.from([110, 101, 119]))).toEqual({ ok: true, value: undefined });
  expect(await readFile(path, 'utf8')).toBe('new');
  expect(await readdir(join(scratch, 'new'))).toEqual(['pose.task']);
});

test('when the last step fails the temporary file is taken away', async () => {
  const path = join(scratch, 'pose.task');
  await mkdir(path);
  expect(await writeAtomic(path, 'data')).toEqual({ ok: false, error: { kind: 'unwritable', path, reason: 'EISDIR' } });
  expect(await readdir(scratch)).toEqual(['pose.task']);
});
