import { zipSync } from 'fflate';
import { imageInputMetadata } from './tflite-metadata.mjs';
import { ALIGNMENT, addMetadata } from './tflite-splice.mjs';

/** Name and bytes of one file in a zip. @typedef {{ readonly name: string, readonly data: Uint8Array }} Entry */

/**
 * Every entry carries this time, in local time as zip has no zone, so that a bundle is the same bytes on every day and
 * machine. 1980 is where zip's clock starts.
 */
const ENTRY_TIME = new Date(1980, 0, 1, 12);

/** Extra field of a zip entry that pads its data to an alignment, as Android's zipalign writes it. */
const ALIGNMENT_FIELD = 0xd935;
/** Bytes of a local header without name and extra field; of an extra field's own header; of the alignment noted in it. */
const LOCAL_HEADER = 30;
const EXTRA_HEADER = 4;
const NOTED_ALIGNMENT = 2;

/**
 * @param {import('./recipe.mjs').Recipe} recipe
 * @param {ReadonlyMap<string, Uint8Array>} parts bytes by file name, every part of the recipe
 * @returns {import('../src/result.ts').Result<Uint8Array, { kind: 'unsuited', file: string, reason: string }>} the bundle's bytes
 */
export const makeBundle = (recipe, parts) => {
  /** @type {Entry[]} */
  const entries = [];
  for (const { file, entry, normalisation } of recipe.parts) {
    const model = parts.get(file);
    if (model === undefined) throw new Error(`makeBundle needs every part of the recipe, got none for ${file}`);
    const described = addMetadata(model, imageInputMetadata({ modelName: 'pose', ...normalisation }));
    if (!described.ok) return { ok: false, error: { ...described.error, file } };
    entries.push({ name: entry, data: described.value });
  }
  return { ok: true, value: zipStored(entries) };
};

/**
 * @param {readonly Entry[]} entries names in ASCII
 * @returns {Uint8Array} an uncompressed zip with the entries in the given order, each one's data aligned to {@link ALIGNMENT}:
 *   PoseLandmarker reads the models where they lie in the zip
 */
export const zipStored = (entries) => {
  /** @type {import('fflate').Zippable} */
  const zippable = {};
  let at = 0;
  for (const { name, data } of entries) {
    const unpadded = at + LOCAL_HEADER + name.length + EXTRA_HEADER + NOTED_ALIGNMENT;
    const padding = (ALIGNMENT - (unpadded % ALIGNMENT)) % ALIGNMENT;
    const extra = new Uint8Array(NOTED_ALIGNMENT + padding);
    new DataView(extra.buffer).setUint16(0, ALIGNMENT, true);
    zippable[name] = [data, { level: 0, mtime: ENTRY_TIME, extra: { [ALIGNMENT_FIELD]: extra } }];
    at = unpadded + padding + data.length;
  }
  return zipSync(zippable);
};
