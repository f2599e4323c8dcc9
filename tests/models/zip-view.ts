/** One entry of a zip as its local header has it, read by hand from the format's description (APPNOTE.TXT 4.3.7, 4.3.12). */
export interface ZipEntry {
  readonly name: string;
  readonly method: number;
  readonly dataAt: number;
  readonly data: Uint8Array;
}

const END = 0x06054b50;
const END_BYTES = 22;

/** Entries in the order of the central directory; the zip has no comment. */
export const zipEntries = (zip: Uint8Array): readonly ZipEntry[] => {
  const view = new DataView(zip.buffer, zip.byteOffset, zip.byteLength);
  const end = zip.length - END_BYTES;
  if (view.getUint32(end, true) !== END) throw new Error('zipEntries needs a zip without comment');
  const count = view.getUint16(end + 10, true);
  const entries: ZipEntry[] = [];
  let at = view.getUint32(end + 16, true);
  for (let i = 0; i < count; i++) {
    const local = view.getUint32(at + 42, true);
    const nameLength = view.getUint16(local + 26, true);
    const dataAt = local + 30 + nameLength + view.getUint16(local + 28, true);
    entries.push({
      name: new TextDecoder().decode(zip.subarray(local + 30, local + 30 + nameLength)),
      method: view.getUint16(local + 8, true),
      dataAt,
      data: zip.subarray(dataAt, dataAt + view.getUint32(local + 18, true)),
    });
    at += 46 + view.getUint16(at + 28, true) + view.getUint16(at + 30, true) + view.getUint16(at + 32, true);
  }
  return entries;
};
