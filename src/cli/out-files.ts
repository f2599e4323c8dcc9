import { access, constants, realpath, rename, rm, stat, writeFile } from 'node:fs/promises';
import { dirname, resolve } from 'node:path';
import { fail, ok, type Result } from '../result.ts';

/** `words` is one sentence. */
type OutFileError = { readonly kind: 'out-file'; readonly words: string };

const wrong = (words: string) => fail({ kind: 'out-file' as const, words });

/** The place itself, links followed, of a file that need not be there. */
const placeOf = (path: string): Promise<string> => realpath(path).catch(() => resolve(path));

/**
 * Whether everything that is to be written can have its place, asked before a clip is watched for minutes.
 * @param outs where something goes
 * @param reads the files that are read: nothing is written over them
 */
export async function checkOutFiles(outs: readonly string[], reads: readonly string[]): Promise<Result<null, OutFileError>> {
  const taken = new Set(await Promise.all(reads.map(placeOf)));
  const places = new Set<string>();
  for (const out of outs) {
    const place = await placeOf(out);
    if (taken.has(place)) return wrong(`${out} is the file to be read and would be written over: choose another name.`);
    if (places.has(place)) return wrong(`${out} is named for two things: give each a file of its own.`);
    places.add(place);
    const found = await stat(place).catch(() => null);
    if (found?.isDirectory()) return wrong(`${out} is a folder: name a file in it.`);
    const folder = dirname(place);
    if (!(await stat(folder).catch(() => null))?.isDirectory())
      return wrong(`There is no folder ${folder} for ${out}: make it, or choose another place.`);
    const writable = await access(folder, constants.W_OK).then(
      () => true,
      () => false,
    );
    if (!writable) return wrong(`${folder} takes no new files: choose another place for ${out}.`);
  }
  return ok(null);
}

/** Writes a whole file or none: a half-written one never stands under the name asked for, nor beside it. */
export async function writeWhole(path: string, text: string): Promise<Result<null, OutFileError>> {
  const part = `${path}.part`;
  try {
    await writeFile(part, text);
    await rename(part, path);
    return ok(null);
  } catch (cause) {
    await rm(part, { force: true });
    const code = cause instanceof Error && 'code' in cause ? String(cause.code) : 'unknown';
    return wrong(`${path} can't be written (${code}): choose another place.`);
  }
}
