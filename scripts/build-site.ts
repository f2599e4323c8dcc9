import { createHash } from 'node:crypto';
import { existsSync } from 'node:fs';
import { mkdir, readdir, readFile, rename, rm, stat, writeFile } from 'node:fs/promises';
import { join, relative } from 'node:path';
import { stripVTControlCharacters } from 'node:util';
import { build, createLogger, type InlineConfig, type Logger, mergeConfig } from 'vite';
import { ensureModels } from '../models/assemble.mjs';
import { explain } from '../models/failure.mjs';
import { fail, ok, type Result } from '../src/result.ts';
import config from '../vite.config.ts';

/** Why there is no site to serve; `words` say what is wrong and what to do. */
export type BuildError =
  | { readonly kind: 'no-models'; readonly words: string }
  | { readonly kind: 'build-failed'; readonly words: string }
  | { readonly kind: 'unwritable'; readonly words: string };

const OUT = 'dist';
/** Lies in the built site and says what it was built from; it is written last, so that a broken-off build has none. */
const STAMP = '.built-from';
/** Everything that the built site depends on. The pose bundles are stood for by their manifest. */
const INPUTS = [
  'src',
  'recordings',
  'index.html',
  'vite.config.ts',
  'scripts/site-assets.ts',
  'scripts/policy-tag.ts',
  'scripts/headers.ts',
  'scripts/headers-file.ts',
  'scripts/site-manifest.ts',
  'scripts/site-worker.ts',
  'LICENSE',
  'NOTICE.md',
  'package-lock.json',
  'models/manifest.json',
];

async function filesUnder(path: string): Promise<readonly string[]> {
  if (!existsSync(path)) return [];
  if (!(await stat(path)).isDirectory()) return [path];
  const entries = await readdir(path, { recursive: true, withFileTypes: true });
  return entries.filter((e) => e.isFile()).map((e) => join(e.parentPath, e.name));
}

/** Part of the stamp: a site built otherwise is built anew. */
const BUILD_KIND = 'production\n';

/** Hash of the names and contents of all inputs: unlike times, it also notices a deleted file and survives a fresh checkout. */
async function fingerprint(root: string): Promise<string> {
  const files = (await Promise.all(INPUTS.map((input) => filesUnder(join(root, input))))).flat().sort();
  const hash = createHash('sha256').update(BUILD_KIND);
  for (const file of files) {
    const content = await readFile(file);
    hash.update(`${relative(root, file)} ${content.length}\n`).update(content);
  }
  return hash.digest('hex');
}

const stampOf = (out: string): Promise<string | null> => readFile(join(out, STAMP), 'utf8').catch(() => null);

const UNWRITABLE = ['EACCES', 'EPERM', 'EROFS', 'ENOSPC', 'ENOTDIR', 'EEXIST'];

/** The first mistake that the bundler names, and where it is, out of a message of many lines with a drawing of the place. */
function firstMistake(message: string): string {
  const lines = stripVTControlCharacters(message).split('\n');
  const what = lines.find((line) => line.trim() && !/^Build failed with/.test(line)) ?? 'the bundler says no more';
  const where = lines.map((line) => /\[ (\S+:\d+:\d+) \]/.exec(line)?.[1]).find((place) => place !== undefined);
  const told = what.trim().replace(/\.+$/, '');
  return where ? `${told} (${where})` : told;
}

function inWords(cause: unknown): BuildError {
  const message = cause instanceof Error ? cause.message : String(cause);
  const code = UNWRITABLE.find((c) => message.includes(c));
  if (!code) return { kind: 'build-failed', words: `The site can't be built: ${firstMistake(message)}.` };
  const path = /'([^']+)'/.exec(message)?.[1] ?? OUT;
  return { kind: 'unwritable', words: `${path} can't be written (${code}): check the folder's permissions and the space left.` };
}

/** What goes wrong is told once, in the words of this file. */
const SILENT: Logger = { ...createLogger('silent'), error: () => {} };

/** Builds beside the served site and swaps the two at the end, so that a running server never serves half a build. */
async function buildInto(root: string, out: string, builtFrom: string): Promise<void> {
  // A test runner that builds on the way says 'test', and React would then go in as its development version. Put back afterwards: what this
  // process starts later, the tests among it, inherits it.
  const before = process.env.NODE_ENV;
  process.env.NODE_ENV = 'production';
  const fresh = `${out}-${process.pid}.local`;
  const old = `${out}-${process.pid}-old.local`;
  try {
    // The bundler itself tells a full or locked disk as a fault of its own.
    await mkdir(fresh);
    const here: InlineConfig = {
      root,
      configFile: false,
      logLevel: 'silent',
      customLogger: SILENT,
      build: { outDir: fresh, emptyOutDir: true },
    };
    await build(mergeConfig(config, here));
    await writeFile(join(fresh, STAMP), builtFrom);
    if (existsSync(out)) await rename(out, old);
    await rename(fresh, out);
  } finally {
    if (before === undefined) delete process.env.NODE_ENV;
    else process.env.NODE_ENV = before;
    await rm(fresh, { recursive: true, force: true });
    await rm(old, { recursive: true, force: true });
  }
}

/** Makes the pose bundles that are missing. */
export async function ensureBundles(root: string, log: (line: string) => void): Promise<Result<null, BuildError>> {
  const models = await ensureModels({ root, log });
  return models.ok ? ok(null) : fail({ kind: 'no-models', words: explain(models.error) });
}

/**
 * Builds the site unless it is there already, built from exactly these sources.
 * @returns whether it was built now
 */
export async function ensureSite(root: string, log: (line: string) => void): Promise<Result<boolean, BuildError>> {
  const bundles = await ensureBundles(root, log);
  if (!bundles.ok) return bundles;
  const out = join(root, OUT);
  const builtFrom = await fingerprint(root);
  if ((await stampOf(out)) === builtFrom) return ok(false);
  log('Building the site ...');
  try {
    await buildInto(root, out, builtFrom);
  } catch (cause) {
    return fail(inWords(cause));
  }
  return ok(true);
}
