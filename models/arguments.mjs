import { parseArgs } from 'node:util';
import { BUNDLE_NAMES } from './recipe.mjs';

const USAGE = `node models/assemble.mjs [${BUNDLE_NAMES.join('|')} ...] [--parts DIR] [--out DIR] [--manifest FILE] [--write-manifest]`;

/**
 * @typedef {object} Arguments
 * @property {readonly import('./recipe.mjs').BundleName[]} names every bundle when none is named
 * @property {string | undefined} parts
 * @property {string | undefined} out
 * @property {string | undefined} manifest
 * @property {boolean} remeasure write the manifest instead of bundles
 */

/**
 * @param {readonly string[]} args of the command line
 * @returns {Arguments | { readonly complaint: string }} the complaint is one sentence
 */
export const readArguments = (args) => {
  const options = /** @type {const} */ ({
    parts: { type: 'string' },
    out: { type: 'string' },
    manifest: { type: 'string' },
    'write-manifest': { type: 'boolean' },
  });
  try {
    const { values, positionals } = parseArgs({ args: [...args], options, allowPositionals: true });
    const names = BUNDLE_NAMES.filter((name) => positionals.includes(name));
    const unknown = positionals.find((name) => !names.some((known) => known === name));
    if (unknown !== undefined) return { complaint: `There is no model called ${unknown}: use ${BUNDLE_NAMES.join(', ')}.` };
    const remeasure = values['write-manifest'] ?? false;
    if (remeasure && (names.length > 0 || values.out !== undefined)) {
      return { complaint: '--write-manifest describes every model and makes none: leave out the names and --out.' };
    }
    const { parts, out, manifest } = values;
    return { names: names.length > 0 ? names : BUNDLE_NAMES, parts, out, manifest, remeasure };
  } catch (error) {
    if (error instanceof TypeError) {
      // Node's message is a sentence, and then a longer hint that does not fit here.
      const [problem] = error.message.split(/\.\s/);
      return { complaint: `${problem}: use ${USAGE}.` };
    }
    throw error;
  }
};
