/** `npm run bench`: what a frame costs, part by part, as ratios where a machine's own speed would decide. */
import { createRequire } from 'node:module';
import { availableParallelism, cpus, loadavg } from 'node:os';
import { join } from 'node:path';
import { parseArgs } from 'node:util';
import { isPoseModel, POSE_MODELS, type PoseModel } from '../src/pose/model.ts';
import { hourCost, measureCost, recordingsIn } from './bench/after-landmarks.ts';
import type { CountDelays } from './bench/count-delay.ts';
import { replayCounts, together } from './bench/count-replay.ts';
import { benchInBrowser } from './bench/in-browser.ts';
import type { MachineSpeed } from './bench/machine-turns.ts';
import type { BenchAnswer, FrameCosts, PathTimes } from './bench/page-protocol.ts';
import { FULL, peopleListCost } from './bench/people-list.ts';
import { recordLines } from './bench/record-lines.ts';
import { type SiteFile, siteBytes } from './bench/site-bytes.ts';
import { spreadOf, spreadWords } from './bench/spread.ts';
import { stickerLines } from './bench/sticker-lines.ts';
import { ensureSite } from './build-site.ts';
import { findChromium } from './chromium.ts';

const ROOT = join(import.meta.dirname, '..');
const CLIP = 'taps-left-steady';
const HOUR_OF = 'taps-left-quick';
const BAD_ARGUMENTS = 2;
/** Half a second a turn: long enough for the clock, short enough that all three see the same machine. */
const FRAMES_PER_TURN = 15;
/** A second: the model has found the person and the motion has its rest picture. */
const WARM_UP_TURNS = 2;
const COST_FRAMES = 180;
/** Frames of the parts' timing that only warm up. */
const COST_WARM_UP = 30;
/** How late a count may be, ms: a voice that comes later no longer belongs to the movement. Chosen. */
const COUNT_WITHIN_MS = 150;

const HELP = `Times this machine: the whole path against the bare pose model, and the parts of a frame's work.

  npm run bench [-- --model lite|full|heavy] [--only stickers|records]

Takes some minutes. Other programs running meanwhile slow all parts alike: trust the ratios more than the milliseconds.
`;

const say = (line = ''): void => {
  process.stdout.write(`${line}\n`);
};
const whisper = (line: string): void => {
  process.stderr.write(`${line}\n`);
};

function giveUp(words: string, exitCode: number): never {
  process.stderr.write(`${words}\n`);
  process.exit(exitCode);
}

/** Parts that can be timed alone. */
const PARTS = ['stickers', 'records'] as const;
type Part = (typeof PARTS)[number];

/** @returns the model to time, or the one part that was asked for */
function modelAsked(): PoseModel | Part {
  let values: { model?: string; only?: string; help?: boolean };
  try {
    values = parseArgs({ options: { model: { type: 'string' }, only: { type: 'string' }, help: { type: 'boolean' } } }).values;
  } catch (cause) {
    const first = (cause instanceof Error ? cause.message : String(cause)).split(/\.(?:\s|$)/)[0];
    giveUp(`${first}. See npm run bench -- --help.`, BAD_ARGUMENTS);
  }
  if (values.help) {
    process.stdout.write(HELP);
    process.exit(0);
  }
  const { model = 'full', only } = values;
  const part = PARTS.find((name) => name === only);
  if (part) return part;
  if (only !== undefined) giveUp(`There is no part "${only}" to time alone: choose ${PARTS.join(' or ')}.`, BAD_ARGUMENTS);
  if (!isPoseModel(model)) giveUp(`There is no model "${model}": choose ${POSE_MODELS.join(', ')}.`, BAD_ARGUMENTS);
  return model;
}

const versionOf = (name: string): string =>
  (createRequire(import.meta.url)(join(ROOT, 'node_modules', name, 'package.json')) as { readonly version: string }).version;

function sayMachine(browser: string): void {
  const load = loadavg()[0] ?? 0;
  say('== Machine');
  say(`${cpus()[0]?.model.trim() ?? 'unknown processor'}, ${availableParallelism()} cores, ${process.platform} ${process.arch}`);
  say(`Node ${process.versions.node}, Chromium ${browser}, @mediapipe/tasks-vision ${versionOf('@mediapipe/tasks-vision')}`);
  if (load > 0) say(`load over the last minute, this bench included: ${load.toFixed(1)}`);
}

const sum = (values: readonly number[]): number => values.reduce((total, value) => total + value, 0);

function sayPaths({ bare, landmarksOnly, withFlow }: PathTimes, model: PoseModel): void {
  const ratios = (whole: readonly number[]) => spreadOf(whole.map((took, i) => took / (bare[i] as number)));
  say(`\n== Whole path against the bare pose model (${model}, CPU, ${CLIP}.mp4, 640x480)`);
  say(
    'Whole path: decode, hand over to the worker, landmarks, motion, measure. Bare: the same model and wasm in a worker of its own on the same',
  );
  say(
    `frames, decoded and handed over before its clock starts. In turns of ${FRAMES_PER_TURN} frames, who begins changing; one ratio a turn.`,
  );
  const overall = (whole: readonly number[]) => `all turns together ${(sum(whole) / sum(bare)).toFixed(3)}`;
  say(`landmarks only: ${spreadWords(ratios(landmarksOnly), 3)}; ${overall(landmarksOnly)} (target at most 1.10)`);
  say(`with flow:      ${spreadWords(ratios(withFlow), 3)}; ${overall(withFlow)} (target at most 1.15)`);
  for (const [name, times] of Object.entries({ bare, 'landmarks only': landmarksOnly, 'with flow': withFlow })) {
    say(`ms a frame, ${name}: ${spreadWords(spreadOf(times), 1)}`);
  }
}

function sayCosts({ width, height, followed, flow, ...rest }: FrameCosts): void {
  const settled = (times: readonly number[]) => spreadOf(times.slice(COST_WARM_UP));
  const [motion, model, reading] = [flow, rest.model, rest.reading].map(settled);
  if (!motion || !model || !reading) return;
  say(`${width}x${height}, foot and shank followed in ${followed} of ${flow.length} frames:`);
  say(`  flow    ${spreadWords(motion, 2, ' ms')}, 95 % within ${motion.p95.toFixed(1)}`);
  say(`  reading ${spreadWords(reading, 2, ' ms')}`);
  const share = ((100 * (motion.median + reading.median)) / model.median).toFixed(1);
  say(`  model   ${spreadWords(model, 1, ' ms')}; flow and reading together are ${share} % of it`);
}

async function sayMeasuring(): Promise<void> {
  const recordings = await recordingsIn(join(ROOT, 'recordings'));
  say('\n== After landmarks and motion (this Node, recordings/)');
  for (const [id, recording] of recordings) {
    const { frames, step, finish } = measureCost(id, recording);
    say(`${id}: a frame ${spreadWords(step, 1, ' us')}, 95 % within ${step.p95.toFixed(1)} (target under 200);`);
    say(`  the end of the set of ${frames} frames ${spreadWords(finish, 1, ' ms')}`);
  }
  const repeated = recordings.find(([id]) => id === HOUR_OF)?.[1];
  if (!repeated) giveUp(`recordings/${HOUR_OF}.json is missing: run npm run recordings.`, 1);
  const hour = hourCost(repeated);
  const whole = hour.stepSeconds + hour.finishSeconds;
  const parts = `${hour.stepSeconds.toFixed(1)} s frame by frame, ${hour.finishSeconds.toFixed(1)} s at the end`;
  say(
    `One hour (${hour.frames} frames, ${HOUR_OF} over and over, ${hour.repetitions} repetitions): ${whole.toFixed(1)} s, of which ${parts}`,
  );
}

/** This machine's speed as measured above: a typical turn's, and that of a picture in between in the clip's own size. */
function speedOf({ paths, costs }: BenchAnswer): MachineSpeed {
  const cost = costs[0];
  if (!cost) throw new Error('speedOf requires the cost of a frame, got none');
  const medianOf = (times: readonly number[]) => spreadOf(times).median;
  const settled = (times: readonly number[]) => medianOf(times.slice(COST_WARM_UP));
  return { wholeMs: medianOf(paths.withFlow), betweenMs: settled(cost.reading) + settled(cost.flow) };
}

function delayWords({ delaysMs, unmatched, missed }: CountDelays): string {
  const { n, median, p95 } = spreadOf(delaysMs);
  const within = ((100 * delaysMs.filter((delay) => delay <= COUNT_WITHIN_MS).length) / n).toFixed(1);
  const apart = `${unmatched} told that the finished set lacks, ${missed} not told`;
  const late = `median ${median.toFixed(0)} ms, 95 % within ${p95.toFixed(0)}, worst ${Math.max(...delaysMs).toFixed(0)}`;
  return `${late}; ${within} % within ${COUNT_WITHIN_MS}; n = ${n}, ${apart}`;
}

async function sayCountDelays(answer: BenchAnswer): Promise<void> {
  const recordings = await recordingsIn(join(ROOT, 'recordings'));
  const speed = speedOf(answer);
  say(`\n== How late a count is (recordings/, replayed as live; target: within ${COUNT_WITHIN_MS} ms)`);
  say(
    'From the moment it could first be known: when the live rule calls the movement over on the finished, lag-free curve of the same set.',
  );
  say(
    'By the pictures: to the time of the picture that told it. By the clock: until that picture had been worked on, the wait for its turn included.',
  );
  const rates: readonly (readonly [string, MachineSpeed | null])[] = [
    ["the recordings' own rate", null],
    [`this machine, ${speed.wholeMs.toFixed(0)} ms a picture, ${speed.betweenMs.toFixed(1)} for one in between`, speed],
    ['half as fast', { wholeMs: 2 * speed.wholeMs, betweenMs: 2 * speed.betweenMs }],
  ];
  for (const [name, rate] of rates) {
    const replays = recordings.map(([id, recording]) => ({ id, ...replayCounts(recording, rate) }));
    say(`${name}:`);
    say(`  by the pictures: ${delayWords(together(replays.map(({ stream }) => stream)))}`);
    if (!rate) continue;
    say(`  by the clock:    ${delayWords(together(replays.map(({ clock }) => clock)))}`);
    for (const { id, clock } of replays) say(`    ${id}: ${delayWords(clock)}`);
  }
}

async function sayPeople(executable: string): Promise<void> {
  const { emptyS, fullS, frames } = await peopleListCost(ROOT, executable);
  const [empty, full] = [spreadOf(emptyS), spreadOf(fullS)];
  const beyond = spreadOf(fullS.map((took, i) => took - (emptyS[i] as number)));
  say(
    `\n== The list of people: ${FULL.people} people with ${FULL.people * FULL.setsEach} sets against nobody (scripts until it stands)`,
  );
  say(
    `nobody ${spreadWords(empty, 2, ' s')}; many ${spreadWords(full, 2, ' s')}; ratio ${(full.median / empty.median).toFixed(2)}`,
  );
  say(`beyond the empty list: ${spreadWords(beyond, 2, ' s')} (target under 1 s)`);
  say(`scrolled, between two pictures: ${spreadWords(frames, 1, ' ms')}, 95 % within ${frames.p95.toFixed(1)}`);
}

async function sayBytes(): Promise<void> {
  const { firstLoad, later } = await siteBytes(join(ROOT, 'dist'));
  const kB = (bytes: number) => `${(bytes / 1000).toFixed(1)} kB`;
  const line = ({ path, bytes, gzipBytes }: SiteFile) => `  ${path}: ${kB(gzipBytes)} (${kB(bytes)} unpacked)`;
  say('\n== Bytes of the built site (gzip -9)');
  say(`first load: ${kB(sum(firstLoad.map((file) => file.gzipBytes)))} (target at most 200 kB)`);
  for (const file of firstLoad) say(line(file));
  say('later, when it is needed:');
  for (const file of later) say(line(file));
}

const model = modelAsked();
if (model === 'stickers') {
  for (const line of stickerLines()) say(line);
  process.exit(0);
}
const built = await ensureSite(ROOT, whisper);
if (!built.ok) giveUp(built.error.words, 1);
const chromium = findChromium(whisper);
if (!chromium.ok) giveUp(chromium.error.words, 1);
if (model === 'records') {
  for await (const line of recordLines(ROOT, chromium.value)) say(line);
  process.exit(0);
}
const order = { model, framesPerTurn: FRAMES_PER_TURN, warmUpTurns: WARM_UP_TURNS, costFrames: COST_FRAMES };
const { answer, version } = await benchInBrowser(ROOT, chromium.value, join(ROOT, 'tests/clips', `${CLIP}.mp4`), order, whisper);
sayMachine(version);
sayPaths(answer.paths, model);
say(`\n== A frame's work, part by part (${model}, CPU, the same frames in both sizes, one after the other)`);
for (const cost of answer.costs) sayCosts(cost);
for (const line of stickerLines()) say(line);
await sayMeasuring();
await sayCountDelays(answer);
await sayPeople(chromium.value);
for await (const line of recordLines(ROOT, chromium.value)) say(line);
await sayBytes();
