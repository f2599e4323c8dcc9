/**
 * Makes the pose model bundles, models/pose_{lite,full,heavy}.task, from the parts in the npm package that ships them.
 * Run `node models/assemble.mjs`, or call {@link ensureModels} from another script. See models/README.md.
 */
import { readFile, realpath } from 'node:fs/promises';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { readArguments } from './arguments.mjs';
import { makeBundle } from './bundle.mjs';
import { explain, shownPath } from './failure.mjs';
import { difference, fingerprintOf } from './fingerprint.mjs';
import { readManifest } from './manifest.mjs';
import { readParts } from './read-parts.mjs';
import { BUNDLE_NAMES, recipeOf, SOURCE_PACKAGE } from './recipe.mjs';
import { remeasureManifest } from './remeasure-manifest.mjs';
import { writeAtomic } from './write-atomic.mjs';

const BAD_ARGUMENTS = 2;

/** @typedef {import('./recipe.mjs').BundleName} BundleName */

/**
 * @typedef {object} EnsureOptions
 * @property {string} root the repository's folder
 * @property {readonly BundleName[]} [names] which bundles, all of them when left out
 * @property {(line: string) => void} log told one line for each bundle made
 * @property {string} [parts] folder of the parts, when not the installed package
 * @property {string} [out] folder of the bundles, when not models/
 * @property {string} [manifest] file, when not models/manifest.json
 */

/**
 * Makes the bundles that are not there yet, or not as the manifest describes them. Every part and every finished bundle is
 * checked before the first file is written, so a failure leaves the folder as it was, but for a full disk midway.
 * @param {EnsureOptions} options
 * @returns {Promise<import('./failure.mjs').Outcome<readonly BundleName[]>>} the bundles made; put a failure into words with
 *   `explain` from failure.mjs
 */
export const ensureModels = async (options) => {
  const { names = BUNDLE_NAMES, log } = options;
  const paths = pathsOf(options);
  const manifest = await readManifest(paths.manifest);
  if (!manifest.ok) return manifest;
  /** @type {{ readonly name: BundleName, readonly path: string, readonly expected: import('./manifest.mjs').BundleEntry }[]} */
  const due = [];
  for (const name of new Set(names)) {
    const expected = manifest.value.get(name);
    if (expected === undefined) throw new Error(`ensureModels needs names out of ${BUNDLE_NAMES.join(', ')}, got ${name}`);
    const path = join(paths.out, expected.file);
    if (!(await isAsExpected(path, expected))) due.push({ name, path, expected });
  }
  if (due.length === 0) return { ok: true, value: [] };

  const fingerprints = new Map(due.flatMap(({ expected }) => expected.parts).map((part) => [part.file, part]));
  const parts = await readParts(paths.parts, [...fingerprints.keys()], fingerprints);
  if (!parts.ok) return parts;
  /** @type {{ readonly name: BundleName, readonly path: string, readonly data: Uint8Array }[]} */
  const made = [];
  for (const { name, path, expected } of due) {
    const bundle = makeBundle(recipeOf(name), parts.value);
    if (!bundle.ok) {
      const { file, reason } = bundle.error;
      return { ok: false, error: { kind: 'not-a-model', path: join(paths.parts, file), reason } };
    }
    const got = fingerprintOf(bundle.value);
    if (difference(got, expected) !== undefined) {
      return { ok: false, error: { kind: 'bundle-differs', file: expected.file, got: got.sha256, expected: expected.sha256 } };
    }
    made.push({ name, path, data: bundle.value });
  }
  for (const { path, data } of made) {
    const written = await writeAtomic(path, data);
    if (!written.ok) return written;
    log(`made ${shownPath(path)} (${data.length} bytes)`);
  }
  return { ok: true, value: made.map(({ name }) => name) };
};

/** @param {Pick<EnsureOptions, 'root' | 'parts' | 'out' | 'manifest'>} options */
const pathsOf = ({ root, parts, out, manifest }) => ({
  parts: parts ?? join(root, 'node_modules', SOURCE_PACKAGE),
  out: out ?? join(root, 'models'),
  manifest: manifest ?? join(root, 'models', 'manifest.json'),
});

/**
 * @param {string} path
 * @param {import('./fingerprint.mjs').Fingerprint} expected
 */
const isAsExpected = async (path, expected) => {
  try {
    return difference(fingerprintOf(await readFile(path)), expected) === undefined;
  } catch {
    // Missing or unreadable: it is made anew, and if that cannot be done either, the write says why.
    return false;
  }
};

/** @param {readonly string[]} args of the command line */
const main = async (args) => {
  const root = dirname(dirname(fileURLToPath(import.meta.url)));
  const asked = readArguments(args);
  if ('complaint' in asked) return stop(asked.complaint, BAD_ARGUMENTS);
  const { names, parts, out, manifest, remeasure } = asked;
  const places = { root, ...(parts && { parts }), ...(out && { out }), ...(manifest && { manifest }) };
  if (remeasure) {
    const paths = pathsOf(places);
    const written = await remeasureManifest(paths.parts, paths.manifest);
    if (!written.ok) return stop(explain(written.error), 1);
    console.log(`wrote ${shownPath(paths.manifest)}`);
    return;
  }
  const made = await ensureModels({ ...places, names, log: (line) => console.log(line) });
  if (!made.ok) stop(explain(made.error), 1);
};

/**
 * @param {string} sentence
 * @param {number} code
 */
const stop = (sentence, code) => {
  console.error(sentence);
  process.exitCode = code;
};

const started = process.argv[1];
if (started !== undefined && (await realpath(started).catch(() => '')) === fileURLToPath(import.meta.url)) {
  await main(process.argv.slice(2));
}
