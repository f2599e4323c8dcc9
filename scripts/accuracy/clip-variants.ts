import { execFile } from 'node:child_process';
import { stat } from 'node:fs/promises';
import { join } from 'node:path';
import { promisify } from 'node:util';
import { fail, ok, type Result } from '../../src/result.ts';
import type { ClipWithTruth } from './clip-with-truth.ts';

const run = promisify(execFile);

/** How a clip is made harder: ffmpeg's words between its input and its output. */
interface Variant {
  readonly name: string;
  readonly words: (bitsPerSecond: number) => readonly string[];
}

/** What a filter has changed is packed almost without loss, so that only the change itself is looked at. */
const ALMOST_WHOLE = ['-crf', '16'];
const rate = (bitsPerSecond: number) => `${Math.round(bitsPerSecond / 1000)}k`;

export const VARIANTS: readonly Variant[] = [
  { name: 'half the bit rate', words: (bps) => ['-b:v', rate(bps / 2), '-maxrate', rate(bps / 2), '-bufsize', rate(bps)] },
  { name: 'light x 0.6', words: () => ['-vf', 'lutrgb=r=val*0.6:g=val*0.6:b=val*0.6,format=yuv420p', ...ALMOST_WHOLE] },
  // Anew in each picture, in brightness and colour alike: a standard deviation of 13 grey levels. Packed quickly, since noise takes long.
  { name: 'more noise', words: () => ['-vf', 'noise=alls=24:allf=t:all_seed=7', '-preset', 'veryfast', ...ALMOST_WHOLE] },
];

interface VariantFailed {
  readonly kind: 'no-variant';
  readonly words: string;
}

/** Makes a variant of a clip with ffmpeg. @param folder where it goes @returns its path */
export async function variantOf(
  { id, path, truth }: ClipWithTruth,
  { name, words }: Variant,
  folder: string,
): Promise<Result<string, VariantFailed>> {
  const out = join(folder, `${id}-${VARIANTS.findIndex((v) => v.name === name)}.mp4`);
  const bitsPerSecond = (8 * (await stat(path)).size) / (truth.durationMs / 1000);
  try {
    await run('ffmpeg', ['-y', '-loglevel', 'fatal', '-i', path, '-c:v', 'libx264', ...words(bitsPerSecond), '-an', out]);
  } catch {
    return fail({ kind: 'no-variant', words: `ffmpeg made no variant of ${path}: install ffmpeg, or make the clip again.` });
  }
  return ok(out);
}
