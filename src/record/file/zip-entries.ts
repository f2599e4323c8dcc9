import { inflated, inflatedAgain } from './inflated.ts';
import { RECORD_LIMITS } from './record-limits.ts';

/** Where one file of a zip lies in it. */
export interface ZipEntry {
  readonly method: number;
  readonly start: number;
  readonly packedBytes: number;
  /** As the directory says. */
  readonly bytes: number;
}

/** Signatures and lengths of APPNOTE.TXT 6.3, as far as they are used here: no zip64, no encryption of zip's own. */
const END = { signature: 0x06054b50, bytes: 22, longestComment: 0xffff } as const;
const DIRECTORY = { signature: 0x02014b50, bytes: 46 } as const;
const LOCAL = { signature: 0x04034b50, bytes: 30 } as const;
const STORED = 0;
const DEFLATED = 8;

function endOf(view: DataView): number | null {
  const last = view.byteLength - END.bytes;
  for (let at = last; at >= Math.max(0, last - END.longestComment); at -= 1) {
    if (view.getUint32(at, true) === END.signature) return at;
  }
  return null;
}

/** Whether bytes begin as a zip does. */
export const isZip = (bytes: Uint8Array): boolean => bytes[0] === 0x50 && bytes[1] === 0x4b;

/** The files of a zip by their names; null when its directory does not hold together. Nothing is unpacked. */
export function zipEntries(bytes: Uint8Array): ReadonlyMap<string, ZipEntry> | null {
  const view = new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength);
  const end = endOf(view);
  if (end === null) return null;
  const count = view.getUint16(end + 10, true);
  let at = view.getUint32(end + 16, true);
  const entries = new Map<string, ZipEntry>();
  for (let i = 0; i < count; i += 1) {
    if (at + DIRECTORY.bytes > end || view.getUint32(at, true) !== DIRECTORY.signature) return null;
    const nameBytes = view.getUint16(at + 28, true);
    const local = view.getUint32(at + 42, true);
    const packedBytes = view.getUint32(at + 20, true);
    if (local + LOCAL.bytes > end || view.getUint32(local, true) !== LOCAL.signature) return null;
    const start = local + LOCAL.bytes + view.getUint16(local + 26, true) + view.getUint16(local + 28, true);
    const isEncrypted = (view.getUint16(at + 8, true) & 1) === 1;
    if (isEncrypted || start + packedBytes > end) return null;
    const name = new TextDecoder().decode(bytes.subarray(at + DIRECTORY.bytes, at + DIRECTORY.bytes + nameBytes));
    if (entries.has(name)) return null;
    entries.set(name, { method: view.getUint16(at + 10, true), start, packedBytes, bytes: view.getUint32(at + 24, true) });
    at += DIRECTORY.bytes + nameBytes + view.getUint16(at + 30, true) + view.getUint16(at + 32, true);
  }
  return entries;
}

/**
 * One file of a zip. Never more bytes than its directory says are unpacked, so that a small file can't grow without end.
 * @param entry with at most `RECORD_LIMITS.partBytes`
 * @returns null when it is no deflate stream, or has not as many bytes as the directory says
 */
export async function unpacked(
  zip: Uint8Array<ArrayBuffer>,
  { method, start, packedBytes, bytes }: ZipEntry,
): Promise<Uint8Array<ArrayBuffer> | null> {
  const packed = zip.subarray(start, start + packedBytes);
  if (method === STORED) return packed.length === bytes ? packed : null;
  if (method !== DEFLATED || bytes > RECORD_LIMITS.partBytes) return null;
  return inflated(packed, bytes);
}

/** The same once more, at once. @param entry one that `unpacked` has unpacked before, out of the same bytes */
export function unpackedAgain(zip: Uint8Array<ArrayBuffer>, { method, start, packedBytes, bytes }: ZipEntry) {
  const packed = zip.subarray(start, start + packedBytes);
  return method === STORED ? packed : inflatedAgain(packed, bytes);
}
