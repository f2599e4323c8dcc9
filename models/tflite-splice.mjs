/**
 * Adds a metadata buffer to a .tflite file without moving or changing a byte of it.
 *
 * A .tflite file is a flatbuffer whose root table (`Model` in TensorFlow Lite's schema.fbs) points forward, by unsigned
 * offsets, to everything else. So a new root can stand before the old file and point into it; only what gains an element is
 * written anew: the list of buffers, the list of metadata entries, and the root itself.
 *
 *   0      offset of the new Model, then the identifier TFL3
 *          vtable of Model, Model            version copied; other fields point into the old file or at the lists below
 *          list of buffers                   the old ones, then the new Buffer
 *          list of metadata entries          the old ones, then the new Metadata
 *          vtable of Buffer, Buffer          points at the metadata bytes
 *          metadata bytes                    a vector: length, then the bytes, aligned to 16
 *          vtable of Metadata, Metadata      name, number of the new buffer
 *          the name TFLITE_METADATA
 *   base   the old file, unchanged           base is a multiple of 16, so the alignment of everything in it holds
 *
 * The old root and the old two lists stay in the file, and nothing points at them any more: under 4 kB in these models.
 */
import { OutsideFile } from './flatbuffer-reader.mjs';
import { IDENTIFIER, METADATA_NAME, MODEL_FIELDS, readModel } from './tflite-model.mjs';

/** Bytes: what schema.fbs forces on the contents of a buffer (`force_align`), the largest alignment in it. */
export const ALIGNMENT = 16;

/** @typedef {{ readonly kind: 'unsuited', readonly reason: string }} Unsuited */

/**
 * @param {Uint8Array} model a whole .tflite file
 * @param {Uint8Array} metadata a finished metadata flatbuffer
 * @returns {import('../src/result.ts').Result<Uint8Array, Unsuited>} the new file; `unsuited` when `model` is no .tflite, has
 *   offsets that lead out of the file, has metadata already, or keeps its buffers outside the flatbuffer
 */
export const addMetadata = (model, metadata) => {
  try {
    const old = readModel(model);
    return typeof old === 'string'
      ? { ok: false, error: { kind: 'unsuited', reason: old } }
      : { ok: true, value: splice(model, old, metadata) };
  } catch (error) {
    if (error instanceof OutsideFile) return { ok: false, error: { kind: 'unsuited', reason: error.message } };
    throw error;
  }
};

/**
 * @param {Uint8Array} model
 * @param {import('./tflite-model.mjs').OldModel} old
 * @param {Uint8Array} metadata
 */
const splice = (model, old, metadata) => {
  const name = new TextEncoder().encode(METADATA_NAME);
  let end = 8;
  /**
   * Reserves room so that what starts `lead` bytes into it is aligned.
   * @param {number} size
   * @param {number} alignment
   */
  const reserve = (size, alignment = 4, lead = 0) => {
    const at = alignUp(end + lead, alignment) - lead;
    end = at + size;
    return at;
  };
  const modelVtable = reserve(4 + 2 * MODEL_FIELDS.length);
  const modelTable = reserve(4 + 4 * MODEL_FIELDS.length);
  const bufferList = reserve(4 + 4 * (old.buffers.length + 1));
  const metadataList = reserve(4 + 4 * (old.metadata.length + 1));
  const bufferVtable = reserve(4 + 2);
  const bufferTable = reserve(4 + 4);
  const contents = reserve(4 + metadata.length, ALIGNMENT, 4);
  const entryVtable = reserve(4 + 4);
  const entryTable = reserve(4 + 8);
  const entryString = reserve(4 + name.length + 1);
  const base = alignUp(end, ALIGNMENT);

  const out = new Uint8Array(base + model.length);
  const view = new DataView(out.buffer);
  /**
   * @param {number} at
   * @param {number} value
   */
  const u32 = (at, value) => view.setUint32(at, value, true);
  /**
   * @param {number} at
   * @param {number} target
   */
  const point = (at, target) => u32(at, target - at);
  /**
   * Every field takes four bytes and has its place in the table, used or not.
   * @param {number} vtable
   * @param {number} table
   * @param {readonly boolean[]} used
   */
  const describe = (vtable, table, used) => {
    view.setUint16(vtable, 4 + 2 * used.length, true);
    view.setUint16(vtable + 2, 4 + 4 * used.length, true);
    used.forEach((present, i) => {
      view.setUint16(vtable + 4 + 2 * i, present ? 4 + 4 * i : 0, true);
    });
    view.setInt32(table, table - vtable, true);
  };
  /**
   * @param {number} list
   * @param {readonly number[]} oldTables
   * @param {number} newTable
   */
  const pointAll = (list, oldTables, newTable) => {
    u32(list, oldTables.length + 1);
    [...oldTables.map((at) => base + at), newTable].forEach((target, i) => {
      point(list + 4 + 4 * i, target);
    });
  };

  point(0, modelTable);
  out.set(new TextEncoder().encode(IDENTIFIER), 4);
  const targets = new Map([...old.targets].map(([field, at]) => [field, base + at]));
  targets.set(MODEL_FIELDS.indexOf('buffers'), bufferList);
  targets.set(MODEL_FIELDS.indexOf('metadata'), metadataList);
  const fields = MODEL_FIELDS.map((field, i) => field === 'version' || targets.has(i));
  describe(modelVtable, modelTable, fields);
  u32(modelTable + 4, old.version);
  for (const [field, target] of targets) point(modelTable + 4 + 4 * field, target);

  pointAll(bufferList, old.buffers, bufferTable);
  pointAll(metadataList, old.metadata, entryTable);

  describe(bufferVtable, bufferTable, [true]);
  point(bufferTable + 4, contents);
  u32(contents, metadata.length);
  out.set(metadata, contents + 4);

  describe(entryVtable, entryTable, [true, true]);
  point(entryTable + 4, entryString);
  u32(entryTable + 8, old.buffers.length);
  u32(entryString, name.length);
  out.set(name, entryString + 4);

  out.set(model, base);
  return out;
};

/**
 * @param {number} at
 * @param {number} alignment
 */
const alignUp = (at, alignment) => Math.ceil(at / alignment) * alignment;
