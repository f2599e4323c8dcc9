/** `npm run accuracy`: how good the numbers are, on clips with known truth. Writes docs/accuracy.md and its plots. */

import { mkdir, writeFile } from 'node:fs/promises';
import { createRequire } from 'node:module';
import { join, relative, resolve } from 'node:path';
import { parseArgs } from 'node:util';
import { exerciseOf } from '../src/exercises/catalogue.ts';
import { EXERCISE_IDS } from '../src/exercises/exercise.ts';
import { isPoseModel, POSE_MODELS, type PoseModel } from '../src/pose/model.ts';
import { fail, ok, type Result } from '../src/result.ts';
import { type ClipOutcome, outcomesOf } from './accuracy/clip-outcome.ts';
import { type ClipWithTruth, clipsIn } from './accuracy/clip-with-truth.ts';
import { differencePlot } from './accuracy/difference-plot.ts';
import { accuracyReport, plotFile, plotTitle } from './accuracy/report.ts';
import { watchedRecording, watcherHash } from './accuracy/watched-recording.ts';
import { ensureSite } from './build-site.ts';
import { findChromium, launchChromium } from './chromium.ts';

const ROOT = join(import.meta.dirname, '..');
const OWN_CLIPS = join(ROOT, 'tests/clips');
const BAD_ARGUMENTS = 2;

const HELP = `Measures every clip with known truth and writes how good the numbers are.

  npm run accuracy [-- --model lite|full|heavy] [--clips FOLDER] [--out FOLDER]

  --model   pose model, full by default; may be given several times
  --clips   folder of ID.mp4 with ID.truth.json, tests/clips by default; may be given several times
  --out     folder for accuracy.md and accuracy/*.svg, docs by default
  --help    shows this

Clips already watched by the same code are not watched again (node_modules/.cache/evenside).
`;

interface Wanted {
  readonly models: readonly PoseModel[];
  readonly folders: readonly string[];
  readonly out: string;
}

function readArguments(
  args: readonly string[],
): Result<Wanted | null, { readonly kind: 'bad-arguments'; readonly words: string }> {
  const bad = (words: string) => fail({ kind: 'bad-arguments' as const, words: `${words} See npm run accuracy -- --help.` });
  const many = { type: 'string', multiple: true } as const;
  const options = { model: many, clips: many, out: { type: 'string' }, help: { type: 'boolean' } } as const;
  let values: { model?: string[]; clips?: string[]; out?: string; help?: boolean };
  try {
    values = parseArgs({ args: [...args], options }).values;
  } catch (cause) {
    return bad(`${(cause instanceof Error ? cause.message : String(cause)).split(/\.(?:\s|$)/)[0]}.`);
  }
  if (values.help) return ok(null);
  const models = values.model ?? ['full'];
  const unknown = models.find((model) => !isPoseModel(model));
  if (unknown !== undefined) return bad(`There is no model "${unknown}": choose ${POSE_MODELS.join(', ')}.`);
  const folders = (values.clips ?? [OWN_CLIPS]).map((folder) => resolve(folder));
  return ok({ models: models.filter(isPoseModel), folders, out: resolve(values.out ?? join(ROOT, 'docs')) });
}

function giveUp(words: string, exitCode: number): never {
  process.stderr.write(`${words}\n`);
  process.exit(exitCode);
}

const say = (line: string): void => {
  process.stderr.write(`${line}\n`);
};

async function clipsOf(folders: readonly string[]): Promise<readonly ClipWithTruth[]> {
  const clips: ClipWithTruth[] = [];
  for (const folder of folders) {
    const found = await clipsIn(folder);
    if (!found.ok) giveUp(found.error.words, BAD_ARGUMENTS);
    if (found.value.skipped.length > 0) say(`left out, not measured by any exercise here: ${found.value.skipped.join(', ')}`);
    // Sets by stickers have one source, not the three that are set against each other here.
    clips.push(...found.value.clips.filter(({ exercise }) => exerciseOf(exercise).seenBy[0] === 'pose'));
  }
  return clips.sort((a, b) => EXERCISE_IDS.indexOf(a.exercise) - EXERCISE_IDS.indexOf(b.exercise));
}

/** The browser's version; it is started once for that, since its executable does not tell on every system. */
async function browserVersion(): Promise<string> {
  const chromium = findChromium(say);
  if (!chromium.ok) giveUp(chromium.error.words, 1);
  const browser = await launchChromium(chromium.value);
  const version = browser.version();
  await browser.close();
  return version;
}

function versionOf(name: string): string {
  const manifest = createRequire(import.meta.url)(join(ROOT, 'node_modules', name, 'package.json')) as {
    readonly version: string;
  };
  return `${name} ${manifest.version}`;
}

const read = readArguments(process.argv.slice(2));
if (!read.ok) giveUp(read.error.words, BAD_ARGUMENTS);
if (read.value === null) {
  process.stdout.write(HELP);
  process.exit(0);
}
const { models, folders, out } = read.value;
const clips = await clipsOf(folders);
const built = await ensureSite(ROOT, say);
if (!built.ok) giveUp(built.error.words, 1);
const browser = await browserVersion();
const watcher = await watcherHash(ROOT, browser);
const outcomes: ClipOutcome[] = [];
for (const model of models) {
  for (const clip of clips) {
    say(`${clip.id}, ${model}`);
    const recording = await watchedRecording(ROOT, clip, model, watcher);
    if (!recording.ok) giveUp(recording.error.words, 1);
    outcomes.push(...outcomesOf(clip, recording.value));
  }
}
const once = outcomes.filter((o) => o.clip.truth.repeats === undefined);
await mkdir(join(out, 'accuracy'), { recursive: true });
for (const exercise of EXERCISE_IDS) {
  const of = (source: ClipOutcome['source']) =>
    once.filter((o) => o.exercise === exercise && o.source === source && o.model === models[0]).flatMap((o) => o.matched);
  if (of('fused').length + of('landmarks').length === 0) continue;
  const series = [
    { name: 'landmarks alone', matched: of('landmarks'), reported: false },
    { name: 'fused, as reported', matched: of('fused'), reported: true },
  ];
  await writeFile(join(out, plotFile(exercise)), differencePlot(plotTitle(exercise), series));
}
const ownClips = new Set(folders.includes(OWN_CLIPS) ? clips.filter((c) => c.path.startsWith(OWN_CLIPS)).map((c) => c.id) : []);
const major = browser.split('.')[0];
const versions = [`Chromium ${major}`, ...['@mediapipe/tasks-vision', '@mediapipe/pose'].map(versionOf)];
await writeFile(join(out, 'accuracy.md'), accuracyReport({ outcomes, models, versions, ownClips }));
say(`written: ${relative(process.cwd(), join(out, 'accuracy.md'))}`);
