import { readFile } from 'node:fs/promises';
import * as v from 'valibot';
import { systemCode } from './failure.mjs';
import { BUNDLE_NAMES, recipeOf } from './recipe.mjs';

const file = {
  file: v.string(),
  bytes: v.pipe(v.number(), v.integer(), v.minValue(1)),
  sha256: v.pipe(v.string(), v.regex(/^[0-9a-f]{64}$/, 'a SHA-256 has 64 hexadecimal digits')),
};
const Bundle = v.strictObject({
  name: v.picklist(BUNDLE_NAMES),
  ...file,
  licence: v.string(),
  source: v.strictObject({ package: v.string(), version: v.string() }),
  parts: v.array(v.strictObject({ ...file, entry: v.string() })),
});
const Manifest = v.strictObject({ schema: v.literal(1), bundles: v.array(Bundle) });

/** @typedef {v.InferOutput<typeof Bundle>} BundleEntry */
/** @typedef {v.InferOutput<typeof Manifest>} Manifest */

/**
 * @param {string} path
 * @returns {Promise<import('./failure.mjs').Outcome<ReadonlyMap<import('./recipe.mjs').BundleName, BundleEntry>>>} every bundle
 *   by name; `manifest-unusable` when the file is missing, is not a manifest, or describes other parts than the recipes
 */
export const readManifest = async (path) => {
  const read = await readJson(path);
  if ('reason' in read) return unusable(path, read.reason);
  const parsed = v.safeParse(Manifest, read.json);
  if (!parsed.success) {
    const issue = parsed.issues[0];
    return unusable(path, `${v.getDotPath(issue) ?? 'the whole file'}: ${issue.message}`);
  }
  const byName = new Map(parsed.output.bundles.map((bundle) => [bundle.name, bundle]));
  for (const name of BUNDLE_NAMES) {
    const bundle = byName.get(name);
    if (bundle === undefined) return unusable(path, `it does not describe the bundle ${name}`);
    if (!describes(bundle, recipeOf(name))) return unusable(path, `it lists other files for ${name} than the bundle is made of`);
  }
  return { ok: true, value: byName };
};

/**
 * @param {Manifest} manifest
 * @returns {string} the text of the manifest file
 */
export const manifestText = (manifest) => `${JSON.stringify(manifest, null, 2)}\n`;

/**
 * @param {BundleEntry} bundle
 * @param {import('./recipe.mjs').Recipe} recipe
 */
const describes = (bundle, recipe) =>
  bundle.file === recipe.file &&
  bundle.parts.length === recipe.parts.length &&
  bundle.parts.every((part, i) => part.file === recipe.parts[i]?.file && part.entry === recipe.parts[i]?.entry);

/**
 * @param {string} path
 * @returns {Promise<{ readonly json: unknown } | { readonly reason: string }>}
 */
const readJson = async (path) => {
  let text;
  try {
    text = await readFile(path, 'utf8');
  } catch (error) {
    return { reason: systemCode(error) };
  }
  try {
    return { json: JSON.parse(text) };
  } catch {
    return { reason: 'it is not JSON' };
  }
};

/**
 * @param {string} path
 * @param {string} reason
 * @returns {import('./failure.mjs').Outcome<never>}
 */
const unusable = (path, reason) => ({ ok: false, error: { kind: 'manifest-unusable', path, reason } });
