/** `npm run measure`: measures a clip or a landmark recording without a screen. See `arguments.ts` for its words and exit codes. */
import { readFile, stat } from 'node:fs/promises';
import { basename } from 'node:path';
import { likeOf } from '../exercises/defined-exercise.ts';
import type { ExerciseId } from '../exercises/exercise.ts';
import type { ExerciseDefinition } from '../exercises/exercise-definition.ts';
import { angleFile, angleTable } from '../record/angle-file.ts';
import { landmarkTable } from '../record/landmark-table.ts';
import { measureRecording } from '../record/measure-recording.ts';
import { decodeRecording } from '../record/recording.ts';
import { HELP, isRecording, isTable, type MeasureArguments, readArguments } from './arguments.ts';
import { definitionOfText } from './definition-text.ts';
import { definitionWords, mismatchWords, recordingWords } from './error-words.ts';
import { noResultWords } from './no-result-words.ts';
import { checkOutFiles, writeWhole } from './out-files.ts';
import { resultJson } from './result-json.ts';
import { resultTable } from './result-table.ts';
import type { WatchFailure } from './watch-clip.ts';

const UNREADABLE = 2;
const NOTHING_SEEN = 3;
const UNAVAILABLE = 1;
const EXIT_CODE: Readonly<Record<WatchFailure['kind'], number>> = {
  unreadable: UNREADABLE,
  'nothing-seen': NOTHING_SEEN,
  unavailable: UNAVAILABLE,
};

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
async function recordingText(
  { clip, side, model, stickers, poseEvery }: MeasureArguments,
  exercise: ExerciseId | ExerciseDefinition,
): Promise<string> {
  if (isRecording(clip)) return readFile(clip, 'utf8');
  // Loaded only now: the browser's driver and the site's builder take seconds, and a recording needs neither.
  const { watchClip } = await import('./watch-clip.ts');
  const watched = await watchClip(clip, { exercise, side, model, poseEvery, ...(stickers ? { stickers } : {}) }, log);
  if (!watched.ok) giveUp(watched.error.words, EXIT_CODE[watched.error.kind]);
  const { watchMs, recording } = watched.value;
  log(`watched in ${(watchMs / 1000).toFixed(1)} s`);
  return recording;
}

/** The exercise that a file defines. */
async function definitionIn(file: string): Promise<ExerciseDefinition> {
  const text = await readFile(file, 'utf8').catch(() => giveUp(`${file} can't be read: check the name.`, UNREADABLE));
  const read = definitionOfText(text);
  return read.ok ? read.value : giveUp(definitionWords(read.error, file), UNREADABLE);
}

async function write(path: string, text: string): Promise<void> {
  const written = await writeWhole(path, text);
  if (!written.ok) giveUp(written.error.words, UNREADABLE);
}

const read = readArguments(process.argv.slice(2));
if (!read.ok) giveUp(read.error.words, UNREADABLE);
if (read.value === null) {
  process.stdout.write(HELP);
  process.exit(0);
}
const wanted = read.value;
await checkReadable(wanted.clip);
const placed = await checkOutFiles(
  [wanted.json, wanted.landmarks, wanted.angles].filter((out) => out !== null),
  [wanted.clip, wanted.exerciseFile].filter((file) => file !== null),
);
if (!placed.ok) giveUp(placed.error.words, UNREADABLE);
const exercise = wanted.exerciseFile === null ? wanted.exercise : await definitionIn(wanted.exerciseFile);
if (exercise === null) throw new Error('measure requires an exercise or its file, got neither');
if (typeof exercise !== 'string' && exercise.side !== 'either' && exercise.side !== wanted.side) {
  giveUp(
    `${exercise.name} is for the ${exercise.side} leg, not the ${wanted.side} one: give --side ${exercise.side}.`,
    UNREADABLE,
  );
}
const text = await recordingText(wanted, exercise);
const recording = decodeRecording(text);
if (!recording.ok) giveUp(recordingWords(recording.error, wanted.clip), UNREADABLE);
// A recording of an exercise of one's own says it is of the catalogue's one that looks at the same parts of the leg.
const recorded = typeof exercise === 'string' ? exercise : likeOf(exercise);
const mismatch = mismatchWords(recording.value, { exercise: recorded, side: wanted.side }, wanted.clip);
if (mismatch) giveUp(mismatch, UNREADABLE);
if (wanted.stickers !== null && recording.value.model !== 'stickers') {
  giveUp(
    `${wanted.clip} is a recording by the pose model, not by stickers: leave out --by, or give the video itself.`,
    UNREADABLE,
  );
}
if (wanted.landmarks)
  await write(wanted.landmarks, isTable(wanted.landmarks) ? landmarkTable(recording.value.observations) : text);
const { kneeLimitDeg, onsetMs, elevationLimitDeg } = wanted;
const lastMs = recording.value.observations.at(-1)?.tMs ?? 0;
if (onsetMs !== null && onsetMs > lastMs) {
  giveUp(`--onset ${onsetMs / 1000} is after the clip's last picture at ${(lastMs / 1000).toFixed(1)} s: check it.`, UNREADABLE);
}
const result = measureRecording(
  { ...recording.value, exercise, side: wanted.side },
  {
    ...(kneeLimitDeg === null ? {} : { kneeLimitDeg }),
    ...(onsetMs === null ? {} : { onsetMs }),
    ...(elevationLimitDeg === null ? {} : { elevationLimitDeg }),
  },
);
const named = typeof exercise === 'string' ? exercise : exercise.name;
const nothing = noResultWords(result, { clip: wanted.clip, exercise: named, model: recording.value.model });
if (nothing) giveUp(nothing, NOTHING_SEEN);
process.stdout.write(resultTable(result));
const definition = typeof exercise === 'string' ? null : exercise;
if (wanted.angles) {
  const of = { result, definition, startedAt: null };
  await write(wanted.angles, isTable(wanted.angles) ? angleTable(of) : `${JSON.stringify(angleFile(of))}\n`);
}
if (wanted.json)
  await write(wanted.json, resultJson(result, basename(wanted.clip), recording.value.source.durationMs, definition));
