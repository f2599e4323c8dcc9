/** `npm run measure`: measures a clip or a landmark recording without a screen. See `arguments.ts` for its words and exit codes. */
import { readFile, rename, stat, writeFile } from 'node:fs/promises';
import { basename } from 'node:path';
import { measureRecording } from '../record/measure-recording.ts';
import { decodeRecording } from '../record/recording.ts';
import { HELP, isRecording, type MeasureArguments, readArguments } from './arguments.ts';
import { mismatchWords, recordingWords } from './error-words.ts';
import { resultJson } from './result-json.ts';
import { resultTable } from './result-table.ts';

const UNREADABLE = 2;
const NOTHING_SEEN = 3;
const UNAVAILABLE = 1;

function giveUp(words: string, exitCode: number): never {
  process.stderr.write(`${words}\n`);
  process.exit(exitCode);
}

const log = (line: string): void => {
  process.stderr.write(`${line}\n`);
};

async function checkReadable(clip: string): Promise<void> {
  const found = await stat(clip).catch(() => null);
  if (!found) giveUp(`There is no file ${clip}: check the name.`, UNREADABLE);
  if (found.isDirectory()) giveUp(`${clip} is a folder: name a video file or a recording in it.`, UNREADABLE);
  if (found.size === 0) giveUp(`${clip} is empty: choose the file again, perhaps it was not copied completely.`, UNREADABLE);
}

/** The recording of the clip, as text: read, or made by watching the video. */
async function recordingText({ clip, exercise, side, model, poseEvery }: MeasureArguments): Promise<string> {
  if (isRecording(clip)) return readFile(clip, 'utf8');
  // Loaded only now: the browser's driver and the site's builder take seconds, and a recording needs neither.
  const { watchClip } = await import('./watch-clip.ts');
  const watched = await watchClip(clip, { exercise, side, model, poseEvery }, log);
  if (!watched.ok) giveUp(watched.error.words, watched.error.kind === 'unreadable' ? UNREADABLE : UNAVAILABLE);
  const { watchMs, recording } = watched.value;
  log(`watched in ${(watchMs / 1000).toFixed(1)} s`);
  return recording;
}

/** Writes whole files only: a half-written result never stands under the name asked for. */
async function write(path: string, text: string): Promise<void> {
  try {
    await writeFile(`${path}.part`, text);
    await rename(`${path}.part`, path);
  } catch (cause) {
    const code = cause instanceof Error && 'code' in cause ? String(cause.code) : 'unknown';
    giveUp(`${path} can't be written (${code}): choose another place.`, UNREADABLE);
  }
}

const read = readArguments(process.argv.slice(2));
if (!read.ok) giveUp(read.error.words, UNREADABLE);
if (read.value === null) {
  process.stdout.write(HELP);
  process.exit(0);
}
const wanted = read.value;
await checkReadable(wanted.clip);
const text = await recordingText(wanted);
const recording = decodeRecording(text);
if (!recording.ok) giveUp(recordingWords(recording.error, wanted.clip), UNREADABLE);
const mismatch = mismatchWords(recording.value, wanted, wanted.clip);
if (mismatch) giveUp(mismatch, UNREADABLE);
if (wanted.landmarks) await write(wanted.landmarks, text);
const result = measureRecording(recording.value);
const turned = result.quality.cameraTurnDeg;
if (result.quality.warnings.includes('camera-too-turned') && turned !== null) {
  giveUp(
    `The camera of ${wanted.clip} is turned ${Math.abs(turned).toFixed(0)} degrees off the side view and nothing can be measured from there: put it square to the person's side, within 30 degrees.`,
    NOTHING_SEEN,
  );
}
if (result.framesUsed === 0) {
  giveUp(
    `Nothing measurable was seen in ${wanted.clip}: the ${wanted.side} leg must be in the picture, side-on and nearest the camera, as ${wanted.exercise} needs it.`,
    NOTHING_SEEN,
  );
}
process.stdout.write(resultTable(result));
if (wanted.json) await write(wanted.json, resultJson(result, basename(wanted.clip), recording.value.source.durationMs));
