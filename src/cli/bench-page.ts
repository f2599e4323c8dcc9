/** The page behind `npm run bench`: times the whole path against the bare pose model, and the parts of a frame's work. */

import '../run/own-scripts.ts';
import { type Remote, transfer, wrap } from 'comlink';
import type { BenchAnswer, BenchOrder, FrameCosts, PathTimes } from '../../scripts/bench/page-protocol.ts';
import { decodedOf } from '../capture/decoded.ts';
import { openVideoFile, type VideoFile } from '../capture/video-file.ts';
import { exerciseOf } from '../exercises/catalogue.ts';
import type { Segment } from '../flow/leg-motion.ts';
import { startSet, stepSet } from '../measure/set.ts';
import type { PoseModel } from '../pose/model.ts';
import { fetchBundle } from '../run/fetch-bundle.ts';
import { videoFileSource } from '../run/frame-source.ts';
import { observations } from '../run/observations.ts';
import { startPoseClient } from '../run/pose-client.ts';
import type { BenchService, FrameCost } from './bench-worker.ts';
import { enlarged } from './enlarged.ts';

const SITE = new URL('../../', document.baseURI).href;
const EXERCISE = exerciseOf('foot-tap');
const SIDE = 'left';
/** Before the first frame, for a model whose clock wants steps: one frame at 30 a second. */
const FIRST_STEP_MS = -1000 / 30;
/** For a decoder that runs ahead to come to rest before the bare model's clock starts. Chosen. */
const SETTLE_MS = 50;
const LARGE = { width: 1280, height: 720 };

interface Taker {
  /** Milliseconds for the next `frames` of the clip, all together; null when it has no more that many. */
  readonly take: (frames: number) => Promise<number | null>;
  readonly close: () => void;
}

async function openClip(): Promise<VideoFile> {
  const file = document.querySelector<HTMLInputElement>('#clip')?.files?.[0];
  if (!file) throw new Error('runBench requires a file in the field, got none');
  const opened = await openVideoFile(file);
  if (!opened.ok) throw new Error(`runBench requires a video that opens, got ${opened.error.kind}`);
  return opened.value;
}

async function startBenchWorker(model: PoseModel): Promise<{ readonly service: Remote<BenchService>; readonly end: () => void }> {
  const worker = new Worker(new URL('./bench-worker.ts', import.meta.url), { type: 'module' });
  const service = wrap<BenchService>(worker);
  const bundle = await fetchBundle(SITE, model, () => undefined);
  if (!bundle.ok) throw new Error(`runBench requires the model's bundle, got ${bundle.error.kind}`);
  await service.load(new URL('wasm', SITE).href, bundle.value);
  return { service, end: () => worker.terminate() };
}

/** The model alone: its pictures are decoded and in its worker before the clock starts, which is the worker's own. */
async function bareTaker(model: PoseModel): Promise<Taker> {
  const { service, end } = await startBenchWorker(model);
  const video = await openClip();
  const frames = video.frames();
  let lastMs = FIRST_STEP_MS;
  return {
    async take(count) {
      const pictures: VideoFrame[] = [];
      const firstMs = lastMs;
      while (pictures.length < count) {
        const next = await frames.next();
        if (next.done) break;
        pictures.push(decodedOf(next.value));
        lastMs = next.value.tMs;
      }
      if (pictures.length < count) {
        for (const picture of pictures) picture.close();
        return null;
      }
      await new Promise((resolve) => setTimeout(resolve, SETTLE_MS));
      return service.bare(transfer(pictures, pictures), (lastMs - firstMs) / count);
    },
    close() {
      frames.return().catch(() => undefined);
      video.close();
      end();
    },
  };
}

/** The product's whole path: decoding, handing over, landmarks, the motion of `segments`, and the measurement's step. */
async function pathTaker(model: PoseModel, segments: readonly Segment[]): Promise<Taker> {
  const started = await startPoseClient({ model, delegate: 'CPU', site: SITE });
  if (!started.ok) throw new Error(`runBench requires the pose model, got ${started.error.kind}`);
  const client = started.value;
  const video = await openClip();
  const spec = { exercise: { ...EXERCISE, segments }, side: SIDE, head: 'find' } as const;
  const observer = { ...client, begin: () => client.begin(spec) };
  const seen = observations(videoFileSource(video), observer, new AbortController().signal);
  let state = startSet({ exercise: EXERCISE, side: SIDE, size: video.size, targetReps: null, endsItself: false });
  return {
    async take(count) {
      const from = performance.now();
      for (let i = 0; i < count; i++) {
        const next = await seen.next();
        if (next.done) return null;
        state = stepSet(state, next.value).state;
      }
      return performance.now() - from;
    },
    close() {
      seen.return().catch(() => undefined);
      client.close();
    },
  };
}

/** All three over the same frames, turn by turn; who begins changes from turn to turn, so that a drift of the machine favours none. */
async function comparePaths({ model, framesPerTurn, warmUpTurns }: BenchOrder): Promise<PathTimes> {
  const names = ['bare', 'landmarksOnly', 'withFlow'] as const;
  const takers = {
    bare: await bareTaker(model),
    landmarksOnly: await pathTaker(model, []),
    withFlow: await pathTaker(model, EXERCISE.segments),
  };
  const times: Record<(typeof names)[number], number[]> = { bare: [], landmarksOnly: [], withFlow: [] };
  try {
    for (let turn = 0; ; turn++) {
      const order = names.map((_, i) => names[(turn + i) % names.length] as (typeof names)[number]);
      const took = { bare: 0, landmarksOnly: 0, withFlow: 0 };
      for (const name of order) {
        const whole = await takers[name].take(framesPerTurn);
        if (whole === null) return times;
        took[name] = whole / framesPerTurn;
      }
      if (turn < warmUpTurns) continue;
      for (const name of names) times[name].push(took[name]);
      window.benchProgress?.(`turn ${turn + 1 - warmUpTurns}`);
    }
  } finally {
    for (const name of names) takers[name].close();
  }
}

/** The cost of each part of the work on the clip's first frames, each as it is and in the middle of a larger picture, in the same moment. */
async function costs({ model, costFrames }: BenchOrder): Promise<readonly FrameCosts[]> {
  const video = await openClip();
  const sizes = await Promise.all([video.size, LARGE].map(async (size) => ({ size, ...(await startBenchWorker(model)) })));
  const spent = sizes.map(({ size }) => ({ ...size, frames: [] as FrameCost[] }));
  const frames = video.frames();
  let lastMs = FIRST_STEP_MS;
  try {
    for (const { service } of sizes) await service.begin([...EXERCISE.segments], SIDE);
    for (let i = 0; i < costFrames; i++) {
      const next = await frames.next();
      if (next.done) break;
      const { tMs } = next.value;
      const image = decodedOf(next.value);
      const pictures = [image.clone(), enlarged(image, LARGE)];
      for (const [k, picture] of pictures.entries()) {
        const cost = await sizes[k]?.service.cost(transfer(picture, [picture]), tMs, tMs - lastMs);
        if (cost) spent[k]?.frames.push(cost);
      }
      lastMs = tMs;
    }
  } finally {
    frames.return().catch(() => undefined);
    video.close();
    for (const { end } of sizes) end();
  }
  return spent.map(({ width, height, frames }) => ({
    width,
    height,
    reading: frames.map((cost) => cost.reading),
    model: frames.map((cost) => cost.model),
    flow: frames.map((cost) => cost.flow),
    followed: frames.filter((cost) => cost.followed).length,
  }));
}

async function runBench(order: BenchOrder): Promise<BenchAnswer> {
  const paths = await comparePaths(order);
  window.benchProgress?.('parts of the work');
  return { paths, costs: await costs(order) };
}

window.runBench = runBench;
