import { createHash } from 'node:crypto';
import { existsSync } from 'node:fs';
import { mkdir, readdir, readFile, rename } from 'node:fs/promises';
import { join } from 'node:path';
import { exerciseOf } from '../../src/exercises/catalogue.ts';
import type { PoseModel } from '../../src/pose/model.ts';
import { decodeRecording, type Recording } from '../../src/record/recording.ts';
import { ok, type Result } from '../../src/result.ts';
import { type CommandFailure, recordClip } from '../measure-command.ts';
import type { ClipWithTruth } from './clip-with-truth.ts';

/** Recordings of clips already watched; nothing is lost when it is thrown away. */
const CACHE = 'node_modules/.cache/evenside';
/** What a recording depends on besides its clip: all that sees pixels. What measures it afterwards is not in it. */
const WATCHERS = ['src/capture', 'src/pose', 'src/flow', 'src/run', 'models/manifest.json'];

async function filesOf(path: string): Promise<readonly string[]> {
  if (path.endsWith('.json')) return [path];
  const entries = await readdir(path, { recursive: true, withFileTypes: true });
  return entries
    .filter((entry) => entry.isFile())
    .map((entry) => join(entry.parentPath, entry.name))
    .sort();
}

/** Hash of the code that watches; the browser, which decodes and runs the model, is part of it. */
export async function watcherHash(root: string, browser: string): Promise<string> {
  const hash = createHash('sha256').update(browser);
  for (const part of WATCHERS) {
    for (const file of await filesOf(join(root, part))) hash.update(await readFile(file));
  }
  return hash.digest('hex');
}

/** The recording of a clip, watched now unless this very clip was already watched by this very code. */
export async function watchedRecording(
  root: string,
  clip: ClipWithTruth,
  model: PoseModel,
  watcher: string,
): Promise<Result<Recording, CommandFailure>> {
  const { posture, segments } = exerciseOf(clip.exercise);
  const key = createHash('sha256')
    .update(await readFile(clip.path))
    .update(JSON.stringify([model, clip.side, clip.exercise, posture, segments, watcher]))
    .digest('hex')
    .slice(0, 32);
  const path = join(root, CACHE, `${key}.json`);
  if (!existsSync(path)) {
    await mkdir(join(root, CACHE), { recursive: true });
    const made = await recordClip(root, { clip: clip.path, exercise: clip.exercise, side: clip.side, model }, `${path}.new`);
    if (!made.ok) return made;
    await rename(`${path}.new`, path);
  }
  const recording = decodeRecording(await readFile(path, 'utf8'));
  if (!recording.ok) throw new Error(`watchedRecording requires recordings that can be read back, got ${recording.error.kind}`);
  return ok(recording.value);
}
