import { readFileSync } from 'node:fs';
import type { Grey } from '../../src/flow/grey.ts';

/** Reads a binary 8-bit PGM of tests/flow/pictures by its name. */
export function pgmPicture(name: string): Grey {
  const bytes = readFileSync(new URL(`./pictures/${name}.pgm`, import.meta.url));
  const header = /^P5\s(\d+)\s(\d+)\s255\s/.exec(bytes.toString('latin1', 0, 40));
  if (!header) throw new Error(`pgmPicture requires an 8-bit P5 file, got ${name}`);
  const width = Number(header[1]);
  const height = Number(header[2]);
  const data = new Uint8Array(bytes.subarray(header[0].length));
  if (data.length !== width * height) throw new Error(`pgmPicture requires ${width * height} pixels, got ${data.length}`);
  return { width, height, data };
}
