import { Builder } from 'flatbuffers';

interface SmallModel {
  /** Contents of the buffers; an empty one is a Buffer table without data, as a .tflite's first buffer is. */
  readonly buffers?: readonly (readonly number[])[];
  readonly entryNames?: readonly string[];
  readonly description?: string;
  /** Writes the field that says a buffer's contents lie outside the flatbuffer. */
  readonly external?: boolean;
  /** Writes a ninth field into the root, which schema.fbs does not know. */
  readonly unknownField?: boolean;
}

/** A .tflite with buffers, metadata entries and a description, and no network in it. */
export const smallModel = (given: SmallModel = {}): Uint8Array => {
  const {
    buffers = [[], [1, 2, 3]],
    entryNames = ['min_runtime_version'],
    description = 'small',
    external,
    unknownField,
  } = given;
  const b = new Builder();
  const offsets = (targets: readonly number[]) => {
    b.startVector(4, targets.length, 4);
    for (const target of targets.toReversed()) b.addOffset(target);
    return b.endVector();
  };
  const bufferList = offsets(
    buffers.map((bytes) => {
      b.startVector(1, bytes.length, 16);
      for (const byte of bytes.toReversed()) b.addInt8(byte);
      const data = b.endVector();
      b.startObject(3);
      if (bytes.length > 0) b.addFieldOffset(0, data, 0);
      if (external) b.addFieldInt64(1, 4096n, 0n);
      return b.endObject();
    }),
  );
  const entries = offsets(
    entryNames.map((name) => {
      const text = b.createString(name);
      b.startObject(2);
      b.addFieldOffset(0, text, 0);
      b.addFieldInt32(1, 1, 0);
      return b.endObject();
    }),
  );
  const text = b.createString(description);
  b.startObject(9);
  b.addFieldInt32(0, 3, 0);
  b.addFieldOffset(3, text, 0);
  b.addFieldOffset(4, bufferList, 0);
  b.addFieldOffset(6, entries, 0);
  if (unknownField) b.addFieldInt32(8, 1, 0);
  b.finish(b.endObject(), 'TFL3');
  return b.asUint8Array().slice();
};
