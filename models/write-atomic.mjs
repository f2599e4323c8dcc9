import { randomUUID } from 'node:crypto';
import { mkdir, open, rename, rm } from 'node:fs/promises';
import { basename, dirname, extname, join } from 'node:path';
import { systemCode } from './failure.mjs';

/**
 * Writes a file so that it is there whole or not at all: into a temporary file beside it, flushed to disk, then renamed.
 * @param {string} path its folder is made when it is missing
 * @param {Uint8Array | string} data
 * @returns {Promise<import('./failure.mjs').Outcome<undefined>>} `unwritable` when the system refuses; nothing is left behind
 */
export const writeAtomic = async (path, data) => {
  const extension = extname(path);
  // The extension stays, so that what ignores the finished file ignores a leftover of a killed run too.
  const temporary = join(dirname(path), `.${basename(path, extension)}-${randomUUID()}${extension}`);
  try {
    await mkdir(dirname(path), { recursive: true });
    const handle = await open(temporary, 'wx');
    try {
      await handle.writeFile(data);
      await handle.sync();
    } finally {
      await handle.close();
    }
    await rename(temporary, path);
    return { ok: true, value: undefined };
  } catch (error) {
    await rm(temporary, { force: true }).catch(() => {});
    return { ok: false, error: { kind: 'unwritable', path, reason: systemCode(error) } };
  }
};
