import { createHash } from 'node:crypto';
import { readdir, readFile } from 'node:fs/promises';
import { join, relative, sep } from 'node:path';

/**
 * What a built site consists of: SHA-256 in hex of each file, by its address within the site, in order. Files whose names begin with a dot say something of the
 * build and are left out.
 * @throws where the folder cannot be read
 */
export async function siteFiles(dist: string): Promise<ReadonlyMap<string, string>> {
  const entries = await readdir(dist, { recursive: true, withFileTypes: true });
  const paths = entries
    .filter((each) => each.isFile() && !each.name.startsWith('.'))
    .map((each) => join(each.parentPath, each.name));
  const hashed = paths.map(async (path) => {
    const hash = createHash('sha256').update(await readFile(path));
    return [relative(dist, path).split(sep).join('/'), hash.digest('hex')] as const;
  });
  return new Map((await Promise.all(hashed)).toSorted(([a], [b]) => (a < b ? -1 : 1)));
}

/** One SHA-256 for the whole site: that of the lines "hash, two blanks, address", as sha256sum writes them. */
export function siteHash(files: ReadonlyMap<string, string>): string {
  const lines = [...files].map(([address, hash]) => `${hash}  ${address}\n`);
  return createHash('sha256').update(lines.join('')).digest('hex');
}
