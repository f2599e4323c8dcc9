import { readFile, stat } from 'node:fs/promises';
import { join } from 'node:path';
import { systemCode } from './failure.mjs';
import { difference, fingerprintOf } from './fingerprint.mjs';

/**
 * @param {string} folder where the source package lies
 * @param {readonly string[]} files names inside it, once each
 * @param {ReadonlyMap<string, import('./fingerprint.mjs').Fingerprint>} [expected] by file name; without it nothing is checked
 * @returns {Promise<import('./failure.mjs').Outcome<ReadonlyMap<string, Uint8Array>>>} bytes by file name; the failure of the first
 *   part that is not there or not as expected
 */
export const readParts = async (folder, files, expected) => {
  if (!(await isFolder(folder))) return { ok: false, error: { kind: 'parts-missing', folder } };
  /** @type {Map<string, Uint8Array>} */
  const parts = new Map();
  for (const file of files) {
    const path = join(folder, file);
    const part = await readPart(path, expected?.get(file));
    if (!part.ok) return part;
    parts.set(file, part.value);
  }
  return { ok: true, value: parts };
};

/**
 * @param {string} path
 * @param {import('./fingerprint.mjs').Fingerprint | undefined} expected
 * @returns {Promise<import('./failure.mjs').Outcome<Uint8Array>>}
 */
const readPart = async (path, expected) => {
  let data;
  try {
    data = await readFile(path);
  } catch (error) {
    const code = systemCode(error);
    return {
      ok: false,
      error: code === 'ENOENT' ? { kind: 'part-missing', path } : { kind: 'part-unreadable', path, reason: code },
    };
  }
  const reason = expected && difference(fingerprintOf(data), expected);
  return reason === undefined ? { ok: true, value: data } : { ok: false, error: { kind: 'part-damaged', path, reason } };
};

/** @param {string} path */
const isFolder = async (path) => {
  try {
    return (await stat(path)).isDirectory();
  } catch (error) {
    systemCode(error);
    return false;
  }
};
