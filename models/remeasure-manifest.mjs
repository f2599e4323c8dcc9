import { readFile } from 'node:fs/promises';
import { join } from 'node:path';
import * as v from 'valibot';
import { makeBundle } from './bundle.mjs';
import { systemCode } from './failure.mjs';
import { fingerprintOf } from './fingerprint.mjs';
import { manifestText } from './manifest.mjs';
import { readParts } from './read-parts.mjs';
import { BUNDLE_NAMES, recipeOf } from './recipe.mjs';
import { writeAtomic } from './write-atomic.mjs';

const Package = v.object({ name: v.string(), version: v.string(), license: v.string() });

/**
 * Writes the manifest anew from the parts as they lie there, unchecked: for a change of the parts or of how bundles are made.
 * The same parts give the same bytes.
 * @param {string} partsFolder the source package, with its package.json
 * @param {string} manifestPath
 * @returns {Promise<import('./failure.mjs').Outcome<undefined>>}
 */
export const remeasureManifest = async (partsFolder, manifestPath) => {
  const recipes = BUNDLE_NAMES.map(recipeOf);
  const files = new Set(recipes.flatMap((recipe) => recipe.parts.map((part) => part.file)));
  const parts = await readParts(partsFolder, [...files]);
  if (!parts.ok) return parts;
  const source = await readPackage(join(partsFolder, 'package.json'));
  if (!source.ok) return source;
  const { name, version, license } = source.value;

  /** @type {import('./manifest.mjs').BundleEntry[]} */
  const bundles = [];
  for (const recipe of recipes) {
    const bundle = makeBundle(recipe, parts.value);
    if (!bundle.ok) {
      const { file, reason } = bundle.error;
      return { ok: false, error: { kind: 'not-a-model', path: join(partsFolder, file), reason } };
    }
    bundles.push({
      name: recipe.name,
      file: recipe.file,
      ...fingerprintOf(bundle.value),
      licence: license,
      source: { package: name, version },
      parts: recipe.parts.map(({ file, entry }) => {
        const data = parts.value.get(file);
        if (data === undefined) throw new Error(`readParts must return every file it was asked for, got none for ${file}`);
        return { file, entry, ...fingerprintOf(data) };
      }),
    });
  }
  return writeAtomic(manifestPath, manifestText({ schema: 1, bundles }));
};

/**
 * @param {string} path
 * @returns {Promise<import('./failure.mjs').Outcome<v.InferOutput<typeof Package>>>}
 */
const readPackage = async (path) => {
  let text;
  try {
    text = await readFile(path, 'utf8');
  } catch (error) {
    return { ok: false, error: { kind: 'part-unreadable', path, reason: systemCode(error) } };
  }
  const parsed = v.safeParse(v.pipe(v.string(), v.parseJson(), Package), text);
  return parsed.success
    ? { ok: true, value: parsed.output }
    : { ok: false, error: { kind: 'part-damaged', path, reason: parsed.issues[0].message } };
};
