import { readdir, readFile } from 'node:fs/promises';
import { join, posix, relative, sep } from 'node:path';
import { gzipSync } from 'node:zlib';

/** A file of the built site; `path` with forward slashes. */
export interface SiteFile {
  readonly path: string;
  readonly bytes: number;
  readonly gzipBytes: number;
}

export interface SiteBytes {
  /** The page and all that it loads before anything is asked of it. */
  readonly firstLoad: readonly SiteFile[];
  /** All else, without maps for debugging. */
  readonly later: readonly SiteFile[];
}

/** Files that a module imports before it runs, as the bundler writes them; `import(...)` comes later and is left out. */
const STATIC_IMPORT = /(?:\bfrom|\bimport)\s*["'](\.[^"']+)["']/g;
/** Scripts, preloaded modules and styles of a page. */
const PAGE_LINK = /<(?:script|link)\b[^>]*?\b(?:src|href)="(\.[^"]+\.(?:js|css))"/g;

async function sizeOf(site: string, path: string): Promise<SiteFile> {
  const content = await readFile(join(site, path));
  return { path, bytes: content.length, gzipBytes: gzipSync(content, { level: 9 }).length };
}

const linked = (text: string, pattern: RegExp, from: string): readonly string[] =>
  [...text.matchAll(pattern)].map(([, link]) => posix.join(posix.dirname(from), link ?? ''));

/** What a first visit loads of the built site, and what comes later. */
export async function siteBytes(site: string): Promise<SiteBytes> {
  const first = new Set(['index.html']);
  const waiting = [...linked(await readFile(join(site, 'index.html'), 'utf8'), PAGE_LINK, 'index.html')];
  if (waiting.length === 0) throw new Error('siteBytes requires a page that loads a script, got none');
  for (let path = waiting.pop(); path !== undefined; path = waiting.pop()) {
    if (first.has(path)) continue;
    first.add(path);
    if (path.endsWith('.js')) waiting.push(...linked(await readFile(join(site, path), 'utf8'), STATIC_IMPORT, path));
  }
  const entries = await readdir(site, { recursive: true, withFileTypes: true });
  const all = entries
    .filter((entry) => entry.isFile())
    .map((entry) => relative(site, join(entry.parentPath, entry.name)).split(sep).join('/'))
    .filter((path) => !path.endsWith('.map') && !posix.basename(path).startsWith('.'))
    .sort();
  const sized = (paths: readonly string[]) => Promise.all(paths.map((path) => sizeOf(site, path)));
  return { firstLoad: await sized([...first]), later: await sized(all.filter((path) => !first.has(path))) };
}
