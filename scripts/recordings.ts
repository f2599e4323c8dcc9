/**
 * `npm run recordings`: makes the files of recordings/ again from the test clips, with the project's own command line, and checks the counts.
 * With `--example` also the example video, which needs ffmpeg.
 */
import { spawnSync } from 'node:child_process';
import { readFile, rename, rm, stat } from 'node:fs/promises';
import { join } from 'node:path';
import { EXERCISE_IDS } from '../src/exercises/exercise.ts';
import { measureRecording } from '../src/record/measure-recording.ts';
import { decodeRecording } from '../src/record/recording.ts';
import { type ClipWithTruth, clipsIn } from './accuracy/clip-with-truth.ts';
import { recordClip } from './measure-command.ts';

const ROOT = join(import.meta.dirname, '..');
const FOLDER = join(ROOT, 'recordings');
const FFMPEG = 'ffmpeg';
const RECORDED = [
  'taps-left-quick',
  'taps-right-weak',
  'slr-left-kneebend',
  'knee-right-straighten',
  'glide-left-sliding',
  'glide-right-tension',
  'toe-left-green',
  'toe-right-weak',
];
/** A recording is read by people in diffs and by every test run. Chosen. */
const MOST_BYTES = 300_000;

/** The first seconds of a clip, in a size that a first visit can wait for. */
const EXAMPLE = { clip: 'taps-left-steady', seconds: 9.7, file: 'example-foot-taps.mp4', mostBytes: 1_000_000 };

const say = (line: string): void => {
  process.stdout.write(`${line}\n`);
};

function giveUp(words: string): never {
  process.stderr.write(`${words}\n`);
  process.exit(1);
}

/** Watches `video` as `clip` and checks that all true repetitions of its first `untilMs`, and no others, were counted. */
async function record(clip: ClipWithTruth, video: string, out: string, untilMs = Number.POSITIVE_INFINITY): Promise<void> {
  const made = await recordClip(ROOT, { clip: video, exercise: clip.exercise, side: clip.side, model: 'full' }, out);
  if (!made.ok) giveUp(made.error.words);
  const recording = decodeRecording(await readFile(out, 'utf8'));
  if (!recording.ok) throw new Error(`record requires a recording that can be read back, got ${recording.error.kind}`);
  const { count } = measureRecording(recording.value);
  const expected = clip.truth.reps.filter((rep) => rep.endMs <= untilMs).length;
  if (count !== expected) giveUp(`${video} has ${expected} repetitions, but ${count} were counted: nothing was replaced.`);
}

async function remakeRecording(clip: ClipWithTruth): Promise<void> {
  const out = join(FOLDER, `${clip.id}.json`);
  const fresh = `${out}.local`;
  try {
    await record(clip, clip.path, fresh);
    const { size } = await stat(fresh);
    if (size > MOST_BYTES)
      giveUp(`The recording of ${clip.id} has ${size} bytes, more than ${MOST_BYTES}: choose a shorter clip.`);
    await rename(fresh, out);
    say(`recordings/${clip.id}.json: ${size} bytes`);
  } finally {
    await rm(fresh, { force: true });
  }
}

async function remakeExample(clip: ClipWithTruth): Promise<void> {
  const { seconds, file, mostBytes } = EXAMPLE;
  const fresh = join(FOLDER, `new-${file}`);
  const heard = join(FOLDER, `${file}.local`);
  const quality = ['-c:v', 'libx264', '-profile:v', 'main', '-pix_fmt', 'yuv420p', '-preset', 'veryslow', '-crf', '20'];
  const bare = ['-an', '-map_metadata', '-1', '-movflags', '+faststart', '-fflags', '+bitexact', '-flags:v', '+bitexact'];
  const args = ['-v', 'error', '-y', '-i', clip.path, '-t', String(seconds), ...quality, ...bare, fresh];
  try {
    const { status, error } = spawnSync(FFMPEG, args, { stdio: 'inherit' });
    if (error) giveUp(`ffmpeg does not start (${error.message}): install it, or leave out --example.`);
    if (status !== 0) giveUp(`ffmpeg can't make the example from ${clip.path}: see above.`);
    const { size } = await stat(fresh);
    if (size > mostBytes) giveUp(`The example has ${size} bytes, more than ${mostBytes}: make it shorter.`);
    await record(clip, fresh, heard, seconds * 1000);
    await rename(fresh, join(FOLDER, file));
    say(`recordings/${file}: ${size} bytes`);
  } finally {
    await Promise.all([fresh, heard].map((path) => rm(path, { force: true })));
  }
}

const words = process.argv.slice(2);
const unknown = words.find((word) => word !== '--example');
if (unknown !== undefined) giveUp(`There is no option ${unknown}. Use it as: npm run recordings [-- --example]`);
const found = await clipsIn(join(ROOT, 'tests/clips'));
if (!found.ok) giveUp(found.error.words);
const clipOf = (id: string): ClipWithTruth => {
  const clip = found.value.clips.find((c) => c.id === id);
  return clip ?? giveUp(`There is no clip ${id} with known truth in tests/clips: only ${EXERCISE_IDS.join(', ')} are measured.`);
};
for (const id of RECORDED) await remakeRecording(clipOf(id));
if (words.includes('--example')) await remakeExample(clipOf(EXAMPLE.clip));
