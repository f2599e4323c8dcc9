import { flatbufferReader } from './flatbuffer-reader.mjs';

/** File identifier of a .tflite (TensorFlow Lite's schema.fbs). */
export const IDENTIFIER = 'TFL3';
/** What the metadata entry must be called for a reader to find it. */
export const METADATA_NAME = 'TFLITE_METADATA';

/** The fields of Model, in the schema's order. */
export const MODEL_FIELDS = /** @type {const} */ ([
  'version',
  'operatorCodes',
  'subgraphs',
  'description',
  'buffers',
  'metadataBuffer',
  'metadata',
  'signatureDefs',
]);
/** Field of Buffer, used by files over 2 GB: contents at an offset from the start of the file, which a splice would move. */
const BUFFER_EXTERNAL_OFFSET = 1;
const METADATA_ENTRY_NAME = 0;

/**
 * @typedef {object} OldModel positions in the old file
 * @property {number} version
 * @property {ReadonlyMap<number, number>} targets what the offsets of the root lead to, by number of the field
 * @property {readonly number[]} buffers
 * @property {readonly number[]} metadata
 */

/**
 * Throws OutsideFile when an offset leads out of the file.
 * @param {Uint8Array} model
 * @returns {OldModel | string} the reason, when the model cannot be spliced
 */
export const readModel = (model) => {
  if (ascii(model.subarray(4, 8)) !== IDENTIFIER) return `it lacks the identifier ${IDENTIFIER}`;
  const read = flatbufferReader(model);
  const root = read.follow(0);
  // A field this schema does not know could hold anything; dropping it silently would change the model.
  for (let i = MODEL_FIELDS.length; i < read.fieldCount(root); i++) {
    if (read.field(root, i) !== 0) return `its root table has an unknown field, number ${i}`;
  }
  const version = read.field(root, 0);
  /** @type {Map<number, number>} */
  const targets = new Map();
  for (let i = 1; i < MODEL_FIELDS.length; i++) {
    const at = read.field(root, i);
    if (at !== 0) targets.set(i, read.follow(at));
  }
  /** @param {typeof MODEL_FIELDS[number]} name */
  const tables = (name) => {
    const vector = targets.get(MODEL_FIELDS.indexOf(name));
    return vector === undefined ? [] : read.elements(vector).map(read.follow);
  };
  const buffers = tables('buffers');
  if (buffers.length === 0) return 'it has no buffers';
  if (buffers.some((b) => read.field(b, BUFFER_EXTERNAL_OFFSET) !== 0)) return 'it keeps buffers outside the flatbuffer';
  const metadata = tables('metadata');
  if (metadata.some((m) => entryName(model, read, m) === METADATA_NAME)) return `it has a ${METADATA_NAME} entry already`;
  return { version: version === 0 ? 0 : read.u32(version), targets, buffers, metadata };
};

/**
 * @param {Uint8Array} model
 * @param {import('./flatbuffer-reader.mjs').FlatbufferReader} read
 * @param {number} entry
 */
const entryName = (model, read, entry) => {
  const at = read.field(entry, METADATA_ENTRY_NAME);
  if (at === 0) return '';
  const string = read.follow(at);
  return ascii(model.subarray(string + 4, string + 4 + read.u32(string)));
};

/** @param {Uint8Array} bytes */
const ascii = (bytes) => new TextDecoder('latin1').decode(bytes);
