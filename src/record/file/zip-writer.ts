import { deflateSync, Zip, ZipPassThrough } from 'fflate';

/** 6 takes three times as long for 9 % fewer bytes. Measured on curves. */
const LEVEL = 1;
/** Zip's number for deflate, APPNOTE.TXT 6.3, 4.4.5. */
const DEFLATED = 8;

/** A file that is deflated in one go: the library's own stream takes a fifth longer. */
class DeflatedFile extends ZipPassThrough {
  override compression = DEFLATED;
  protected override process(chunk: Uint8Array, final: boolean): void {
    this.ondata(null, deflateSync(chunk, { level: LEVEL }), final);
  }
}

/** Puts a zip together, file by file; no more than what is packed stays in the memory. */
export interface ZipWriter {
  readonly add: (name: string, bytes: Uint8Array) => void;
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
  const added = (file: ZipPassThrough, bytes: Uint8Array) => {
    file.mtime = moment;
    zip.add(file);
    file.push(bytes, true);
  };
  return {
    add: (name, bytes) => added(new DeflatedFile(name), bytes),
    addPacked: (name, bytes) => added(new ZipPassThrough(name), bytes),
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
