/** Thrown when an offset in a flatbuffer leads out of the file, so that the caller can call the file damaged. */
export class OutsideFile extends Error {
  /**
   * @param {number} at
   * @param {number} size
   */
  constructor(at, size) {
    super(`offset ${at} leads out of the file of ${size} bytes`);
  }
}

/**
 * @typedef {object} FlatbufferReader every position is in bytes from the start of the file
 * @property {(at: number) => number} u16
 * @property {(at: number) => number} u32
 * @property {(at: number) => number} i32
 * @property {(at: number) => number} follow the target of the forward offset stored at `at`
 * @property {(table: number) => number} fieldCount how many fields the table's vtable has room for
 * @property {(table: number, field: number) => number} field position of a field's value, 0 when the table lacks it
 * @property {(vector: number) => readonly number[]} elements positions of the 4-byte elements of a vector
 */

/**
 * Reads a flatbuffer and throws {@link OutsideFile} instead of reading beside it. Little-endian, as the format says.
 * @param {Uint8Array} bytes
 * @returns {FlatbufferReader}
 */
export const flatbufferReader = (bytes) => {
  const view = new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength);
  /**
   * @param {number} at
   * @param {number} size
   */
  const inside = (at, size) => {
    if (at < 0 || at + size > bytes.length) throw new OutsideFile(at, bytes.length);
    return at;
  };
  /** @param {number} at */
  const u16 = (at) => view.getUint16(inside(at, 2), true);
  /** @param {number} at */
  const u32 = (at) => view.getUint32(inside(at, 4), true);
  /** @param {number} at */
  const i32 = (at) => view.getInt32(inside(at, 4), true);
  /** @param {number} at */
  const follow = (at) => inside(at + u32(at), 4);
  // A table begins with the signed distance back to its vtable, and a vtable with its own size and the table's, in bytes.
  /** @param {number} table */
  const vtable = (table) => table - i32(table);
  /** @param {number} table */
  const fieldCount = (table) => Math.max(0, (u16(vtable(table)) - 4) >> 1);
  /**
   * @param {number} table
   * @param {number} field
   */
  const field = (table, field) => {
    if (field >= fieldCount(table)) return 0;
    const distance = u16(vtable(table) + 4 + 2 * field);
    return distance === 0 ? 0 : inside(table + distance, 1);
  };
  /** @param {number} vector */
  const elements = (vector) => {
    const count = u32(vector);
    inside(vector + 4, 4 * count);
    return Array.from({ length: count }, (_, i) => vector + 4 + 4 * i);
  };
  return { u16, u32, i32, follow, fieldCount, field, elements };
};
