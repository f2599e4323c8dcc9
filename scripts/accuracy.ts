/** `npm run accuracy`: how good the numbers are, on clips with known truth. Writes docs/accuracy.md and its plots. */

import { mkdir, readFile, writeFile } from 'node:fs/promises';
import { createRequire } from 'node:module';
import { join, relative, resolve } from 'node:path';
import { parseArgs } from 'node:util';
import { EXERCISE_IDS } from '../src/exercises/exercise.ts';
import { isPoseModel, POSE_MODELS, type PoseModel } from '../src/pose/model.ts';
import { fail, ok, type Result } from '../src/result.ts';
import { type ClipOutcome, outcomesOf } from './accuracy/clip-outcome.ts';
import { type ClipWithTruth, clipsIn } from './accuracy/clip-with-truth.ts';
import { differencePlot } from './accuracy/difference-plot.ts';
import { type GlideOutcome, glideOutcome } from './accuracy/glide-clips.ts';
import { glidePart } from './accuracy/glide-part.ts';
import { accuracyReport, plotFile, plotTitle } from './accuracy/report.ts';
import { withPart } from './accuracy/report-part.ts';
import { isBySticker, stickerFindings } from './accuracy/sticker-clips.ts';
import { stickerPart } from './accuracy/sticker-part.ts';
import { watchedRecording, watcherHash } from './accuracy/watched-recording.ts';
import { ensureSite } from './build-site.ts';
import { findChromium, launchChromium } from './chromium.ts';

const ROOT = join(import.meta.dirname, '..');
const OWN_CLIPS = join(ROOT, 'tests/clips');
const BAD_ARGUMENTS = 2;

const HELP = `Measures every clip with known truth and writes how good the numbers are.

  npm run accuracy [-- --model lite|full|heavy] [--clips FOLDER] [--out FOLDER] [--only PART]

  --model   pose model, full by default; may be given several times
  --clips   folder of ID.mp4 with ID.truth.json, tests/clips by default; may be given several times
  --out     folder for accuracy.md and accuracy/*.svg, docs by default
  --only    glides (nerve glides) or stickers (sets by stickers): measures these alone and puts their part in the report that is there
  --help    shows this

Clips already watched by the same code are not watched again (node_modules/.cache/evenside), but for those by stickers, which take seconds; these are
made harder too, with ffmpeg.
`;

const PARTS = ['glides', 'stickers'] as const;
type Part = (typeof PARTS)[number];

interface Wanted {
  readonly models: readonly PoseModel[];
  readonly folders: readonly string[];
  readonly out: string;
  /** Null: the whole report. */
  readonly only: Part | null;
}

function readArguments(
  args: readonly string[],
): Result<Wanted | null, { readonly kind: 'bad-arguments'; readonly words: string }> {
  const bad = (words: string) => fail({ kind: 'bad-arguments' as const, words: `${words} See npm run accuracy -- --help.` });
  const many = { type: 'string', multiple: true } as const;
  const options = {
    model: many,
    clips: many,
    out: { type: 'string' },
    only: { type: 'string' },
    help: { type: 'boolean' },
  } as const;
  let values: { model?: string[]; clips?: string[]; out?: string; only?: string; help?: boolean };
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
  const out = resolve(values.out ?? join(ROOT, 'docs'));
  const only = PARTS.find((part) => part === values.only) ?? null;
  if (values.only !== undefined && only === null) return bad(`There is no part "${values.only}": choose ${PARTS.join(' or ')}.`);
  return ok({ models: models.filter(isPoseModel), folders, out, only });
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
    clips.push(...found.value.clips);
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
const { models, folders, out, only } = read.value;
const everyClip = await clipsOf(folders);
const isGlide = (clip: ClipWithTruth): boolean => clip.exercise === 'nerve-glide';
// Sets by stickers have one source, not the three that are set against each other here.
const clips = only ? [] : everyClip.filter((clip) => !isGlide(clip) && !isBySticker(clip));
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
const glides: GlideOutcome[] = [];
for (const clip of only === 'stickers' ? [] : everyClip.filter(isGlide)) {
  say(`${clip.id}, ${models[0] ?? 'full'}`);
  const recording = await watchedRecording(ROOT, clip, models[0] ?? 'full', watcher);
  if (!recording.ok) giveUp(recording.error.words, 1);
  glides.push(glideOutcome(clip, recording.value));
}
const own = (list: readonly ClipWithTruth[]) =>
  new Set(folders.includes(OWN_CLIPS) ? list.filter((c) => c.path.startsWith(OWN_CLIPS)).map((c) => c.id) : []);
const parts: string[] = [];
if (only !== 'stickers') parts.push(glidePart(glides, own(everyClip)));
if (only !== 'glides') {
  const findings = await stickerFindings(ROOT, everyClip.filter(isBySticker), own(everyClip), say);
  if (!findings.ok) giveUp(findings.error.words, 1);
  parts.push(stickerPart(findings.value, own(everyClip)));
}
const reportPath = join(out, 'accuracy.md');
if (only) {
  await writeFile(reportPath, parts.reduce(withPart, await readFile(reportPath, 'utf8')));
  say(`put in: ${relative(process.cwd(), reportPath)}`);
  process.exit(0);
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
const ownClips = own(clips);
const major = browser.split('.')[0];
const versions = [`Chromium ${major}`, ...['@mediapipe/tasks-vision', '@mediapipe/pose'].map(versionOf)];
await writeFile(reportPath, parts.reduce(withPart, accuracyReport({ outcomes, models, versions, ownClips })));
say(`written: ${relative(process.cwd(), reportPath)}`);
