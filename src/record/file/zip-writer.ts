import { Zip, type ZipInputFile, ZipPassThrough } from 'fflate';
import { type Deflated, deflated } from './packed-part.ts';

/** Zip's number for deflate, APPNOTE.TXT 6.3, 4.4.5. */
const DEFLATED = 8;

/** Puts a zip together, file by file; no more than what is packed stays in the memory. */
export interface ZipWriter {
  readonly add: (name: string, bytes: Uint8Array) => void;
  readonly addDeflated: (name: string, file: Deflated) => void;
  /** The same for bytes that would not get fewer. */
  readonly addPacked: (name: string, bytes: Uint8Array) => void;
  readonly end: () => Uint8Array<ArrayBuffer>;
}

/** @param moment what the files say of when they were changed, ISO 8601, UTC */
export function zipWriter(moment: string): ZipWriter {
  const chunks: Uint8Array[] = [];
  const zip = new Zip((error, chunk) => {
    if (error) throw error;
    chunks.push(chunk);
  });
  const addDeflated = (filename: string, { size, crc, packed }: Deflated) => {
    const file: ZipInputFile = { filename, size, crc, compression: DEFLATED, mtime: moment };
    zip.add(file);
    file.ondata?.(null, packed, true);
  };
  return {
    addDeflated,
    add: (name, bytes) => addDeflated(name, deflated(bytes)),
    addPacked(name, bytes) {
      const file = new ZipPassThrough(name);
      file.mtime = moment;
      zip.add(file);
      file.push(bytes, true);
    },
    end() {
      zip.end();
      const whole = new Uint8Array(chunks.reduce((sum, { length }) => sum + length, 0));
      let at = 0;
      for (const chunk of chunks) {
        whole.set(chunk, at);
        at += chunk.length;
      }
      return whole;
    },
  };
}
