/**
 * Clips with known truth through the real thing: Chromium, its decoder, the pose model `full`, the picture's motion, the measurement.
 * Files are watched picture by picture at whatever speed, so that several at once give the same figures as one by one.
 */
import { describe, expect, test } from 'vitest';
import type { WatchOrder } from '../../src/cli/page-protocol.ts';
import type { MeasuredRep, SetResult } from '../../src/measure/set-result.ts';
import { rangeBetweenStickers } from '../clips/range-between-stickers.ts';
import { type ClipTruth, clipPath, exerciseOfClip, type TrueRep, truthOf } from '../clips/truth.ts';
import { clipWatcherForTests } from './clip-watcher.ts';

/** Set by `npm test -- --only every-clip`: these too, whose exercise others here show under conditions as hard or harder. */
const EVERY_CLIP = process.env.EVERY_CLIP === 'yes';
const ON_DEMAND = [
  'taps-left-steady',
  'taps-left-quick',
  'slr-left-steady',
  'slr-left-aside',
  'slr-right-turned',
  'glide-right-low',
  'glide-left-rising',
  'heel-left-both',
];
const chosen = <T extends { readonly id: string }>(clips: readonly T[]): readonly T[] =>
  clips.filter(({ id }) => EVERY_CLIP || !ON_DEMAND.includes(id));

const clips = clipWatcherForTests();

const measured = (
  path: string,
  truth: Pick<ClipTruth, 'side' | 'measures' | 'exercise'>,
  { model = 'full', poseEvery = 1 }: Partial<Pick<WatchOrder, 'model' | 'poseEvery'>> = {},
): Promise<SetResult> => clips.measured(path, { exercise: exerciseOfClip(truth), side: truth.side, model, poseEvery });

/** Differences to the truth of the complete repetitions, matched by overlap in time; NaN where the truth has none. */
function differences(result: SetResult, truth: ClipTruth, of: (rep: MeasuredRep, real: TrueRep) => number): readonly number[] {
  return result.reps
    .filter((rep) => rep.complete)
    .map((rep) => {
      const real = truth.reps.find((t) => rep.startMs < t.endMs && rep.endMs > t.startMs);
      return real ? of(rep, real) : Number.NaN;
    });
}

const rangeErrors = (result: SetResult, truth: ClipTruth) =>
  differences(result, truth, (rep, real) => Math.abs(rep.rangeDeg - real.trueRangeDeg));
/** How long the forefoot is truly more than 3 degrees up in a repetition, ms. */
function timeUp({ frames }: ClipTruth, { startMs, endMs }: TrueRep): number {
  const up = frames.filter((f) => f.tMs >= startMs && f.tMs <= endMs && f.ankleDeg > 3).map((f) => f.tMs);
  return Math.max(...up) - Math.min(...up);
}
const mean = (values: readonly number[]) => values.reduce((sum, v) => sum + v, 0) / values.length;

describe.concurrent('foot taps', () => {
  test.each(
    chosen([
      { id: 'taps-left-steady', partial: 0 },
      { id: 'taps-right-weak', partial: 0 },
      { id: 'taps-left-quick', partial: 0 },
      { id: 'taps-right-dim-partial', partial: 2 },
    ]),
  )('are counted exactly and measured to a degree: $id', async ({ id, partial }) => {
    const truth = truthOf(id);
    const result = await measured(clipPath(id), truth);
    expect({ count: result.count, partial: result.partialCount }).toEqual({ count: truth.reps.length, partial });
    const errors = rangeErrors(result, truth);
    expect(mean(errors)).toBeLessThanOrEqual(1);
    expect(Math.max(...errors)).toBeLessThanOrEqual(3);
  });

  test('that are quick are counted exactly where only every fifth picture is posed, as on a very slow machine', async () => {
    const truth = truthOf('taps-left-quick');
    const result = await measured(clipPath(truth.id), truth, { poseEvery: 5 });
    expect({ count: result.count, partial: result.partialCount }).toEqual({ count: truth.reps.length, partial: 0 });
    expect(mean(rangeErrors(result, truth))).toBeLessThanOrEqual(1);
    // Far more pictures than the 61 that were posed.
    expect(result.framesUsed).toBeGreaterThan(250);
  });

  test('are measured as before when the camera is knocked over and turned in the middle of a set, and that is told', async () => {
    const truth = truthOf('taps-right-knock');
    const result = await measured(clipPath(truth.id), truth);
    expect({ count: result.count, partial: result.partialCount }).toEqual({ count: truth.reps.length, partial: 0 });
    expect(mean(rangeErrors(result, truth))).toBeLessThanOrEqual(1);
    expect(result.quality.warnings).toEqual(['camera-moved']);
  });
});

describe.concurrent('leg raises', () => {
  test.each(
    chosen([{ id: 'slr-left-steady' }, { id: 'slr-right-turned' }, { id: 'slr-left-kneebend' }, { id: 'slr-left-aside' }]),
  )('are counted exactly, their peak within 1.5 degrees in the mean and 4 at worst: $id', async ({ id }) => {
    const truth = truthOf(id);
    const result = await measured(clipPath(id), truth);
    expect({ count: result.count, partial: result.partialCount }).toEqual({ count: truth.reps.length, partial: 0 });
    const errors = differences(result, truth, (rep, real) => Math.abs(rep.peakDeg - real.truePeakDeg));
    expect(mean(errors)).toBeLessThanOrEqual(1.5);
    expect(Math.max(...errors)).toBeLessThanOrEqual(4);
    const bent = result.reps.filter((rep) => rep.flags.includes('knee-bent')).map((rep) => rep.number);
    expect(bent).toEqual(id === 'slr-left-kneebend' ? [2] : []);
  });
});

describe.concurrent('knee extensions', () => {
  test.each([
    { id: 'knee-right-straighten', partial: 0 },
    { id: 'knee-left-turned', partial: 1 },
  ])('are counted exactly and measured within 1.5 degrees in the mean and 4 at worst: $id', async ({ id, partial }) => {
    const truth = truthOf(id);
    const result = await measured(clipPath(id), truth);
    expect({ count: result.count, partial: result.partialCount }).toEqual({ count: truth.reps.length, partial });
    const errors = rangeErrors(result, truth);
    expect(mean(errors)).toBeLessThanOrEqual(1.5);
    expect(Math.max(...errors)).toBeLessThanOrEqual(4);
  });
});

describe.concurrent('nerve glides', () => {
  test.each(
    chosen([
      { id: 'glide-left-sliding', pattern: 'slide' },
      { id: 'glide-right-tension', pattern: 'tension' },
      { id: 'glide-right-low', pattern: 'slide' },
      { id: 'glide-left-rising', pattern: 'slide' },
    ]),
  )('are told to be $pattern in every cycle and counted exactly: $id', async ({ id, pattern }) => {
    const truth = truthOf(id);
    const result = await measured(clipPath(id), truth);
    expect({ count: result.count, partial: result.partialCount }).toEqual({ count: truth.reps.length, partial: 0 });
    expect(result.glide?.pattern).toBe(pattern);
    expect(result.glide?.cycles.map((cycle) => cycle.pattern)).toEqual(truth.reps.map(() => pattern));
    expect(mean(rangeErrors(result, truth))).toBeLessThanOrEqual(2.5);
    const highest = Math.max(...truth.frames.map((frame) => frame.legElevationDeg));
    const { legHeld } = result.glide ?? {};
    expect(Math.abs((legHeld?.highestDeg ?? Number.NaN) - highest)).toBeLessThanOrEqual(legHeld?.uncertaintyDeg ?? Number.NaN);
  });
});

describe.concurrent('heel stands', () => {
  test.each(chosen([{ id: 'heel-left-both' }, { id: 'heel-right-sinks' }]))(
    'are counted, and timed within 0.2 s: $id',
    async ({ id }) => {
      const truth = truthOf(id);
      const result = await measured(clipPath(id), truth);
      expect({ count: result.count, partial: result.partialCount }).toEqual({ count: truth.reps.length, partial: 0 });
      const late = differences(result, truth, (rep, real) => Math.abs((rep.upMs ?? Number.NaN) - timeUp(truth, real)));
      expect(Math.max(...late)).toBeLessThanOrEqual(200);
      expect(result.reps.map((rep) => rep.flags.includes('sinking'))).toEqual(truth.reps.map(() => id === 'heel-right-sinks'));
      expect(Math.max(...rangeErrors(result, truth))).toBeLessThanOrEqual(3);
    },
  );
});

const stickerErrors = (result: SetResult, truth: ClipTruth) =>
  differences(result, truth, (rep, real) => Math.abs(rep.rangeDeg - rangeBetweenStickers(truth, real)));

test('foot taps seen close by with three stickers are counted exactly, their range within half a degree in the mean and one at worst', async () => {
  const truth = truthOf('taps-left-stickers');
  const order = { exercise: 'foot-tap', side: 'left', model: 'full', poseEvery: 1, stickers: { colour: null } } as const;
  const result = await clips.measured(clipPath(truth.id), order);
  expect({ count: result.count, partial: result.partialCount }).toEqual({ count: truth.reps.length, partial: 0 });
  const errors = stickerErrors(result, truth);
  expect(mean(errors)).toBeLessThanOrEqual(0.5);
  expect(Math.max(...errors)).toBeLessThanOrEqual(1);
  expect(result.quality.warnings).toEqual([]);
});

describe.concurrent('big toe lifts, by stickers found without being told their colour', () => {
  test.each(['toe-left-green', 'toe-right-weak'])(
    'are counted exactly, their range within half a degree in the mean and one at worst: %s',
    async (id) => {
      const truth = truthOf(id);
      const result = await measured(clipPath(id), truth);
      expect({ count: result.count, partial: result.partialCount }).toEqual({ count: truth.reps.length, partial: 0 });
      const errors = stickerErrors(result, truth);
      expect(mean(errors)).toBeLessThanOrEqual(0.5);
      expect(Math.max(...errors)).toBeLessThanOrEqual(1);
      expect(result.quality.warnings).toEqual([]);
      expect(result.framesUsed).toBe(result.frames);
      expect(new Set(result.reps.map((rep) => rep.source))).toEqual(new Set(['stickers']));
    },
  );

  test('are the same when the colour is told, and nothing is found of another colour', async () => {
    const truth = truthOf('toe-left-green');
    const order = { exercise: 'toe-lift', side: 'left', model: 'full', poseEvery: 1 } as const;
    const result = await clips.measured(clipPath(truth.id), { ...order, stickers: { colour: '#16d84c' } });
    expect(result.count).toBe(truth.reps.length);
    expect(mean(stickerErrors(result, truth))).toBeLessThanOrEqual(0.5);
    const blue = await clips.watch(clipPath(truth.id), { ...order, stickers: { colour: '#2040ff' } });
    expect(blue).toMatchObject({ ok: false, error: { kind: 'nothing-seen' } });
  });

  test('are measured within 1.5 degrees by three points that are named in the first picture, colour not looked at', async () => {
    const truth = truthOf('toe-right-weak');
    const spot = (name: string) => {
      const [x, y] = truth.frames[0]?.stickersPx?.[name] ?? [Number.NaN, Number.NaN];
      return { x, y };
    };
    const skin = { tip: spot('tip'), knuckle: spot('knuckle'), arch: spot('arch') };
    const order = { exercise: 'toe-lift', side: 'right', model: 'full', poseEvery: 1 } as const;
    const result = await clips.measured(clipPath(truth.id), { ...order, stickers: { colour: null, skin } });
    expect(result.count).toBe(truth.reps.length);
    expect(mean(stickerErrors(result, truth))).toBeLessThanOrEqual(1.5);
    const wall = { ...skin, arch: { x: 2, y: 700 } };
    const refused = await clips.watch(clipPath(truth.id), { ...order, stickers: { colour: null, skin: wall } });
    expect(refused).toMatchObject({
      ok: false,
      error: { kind: 'nothing-seen', words: expect.stringMatching(/^The point arch lies outside/) },
    });
  });

  test('a clip without stickers says so in one sentence', async () => {
    const order = { exercise: 'toe-lift', side: 'left', model: 'full', poseEvery: 1 } as const;
    const none = await clips.watch(clipPath('taps-left-quick'), order);
    expect(none).toMatchObject({
      ok: false,
      error: { kind: 'nothing-seen', words: expect.stringMatching(/^No stickers were found in/) },
    });
  });
});

describe.concurrent('the same taps in another wrapping are the same taps', () => {
  const first = { ...truthOf('taps-left-steady'), reps: truthOf('taps-left-steady').reps.slice(0, 3) };
  test.each(['taps-turned-phone.mp4', 'taps-webm.webm', 'taps-variable-rate.mp4'])('%s', async (file) => {
    // It is the decoding that is looked at, so the lightest model does.
    const result = await measured(clipPath('').replace('.mp4', `formats/${file}`), first, { model: 'lite' });
    expect({ count: result.count, partial: result.partialCount }).toEqual({ count: 3, partial: 0 });
    expect(mean(rangeErrors(result, first))).toBeLessThanOrEqual(1.5);
  });
});

describe.concurrent('a file that cannot be measured says so in one sentence', () => {
  const order = { exercise: 'foot-tap', side: 'left', model: 'lite', poseEvery: 1 } as const;
  test.each([
    { file: 'formats/broken-off.mp4', says: /damaged after 3\.\d s/ },
    { file: 'formats/only-sound.mp4', says: /no picture/ },
    { file: 'README.md', says: /no video file/ },
  ])('$file', async ({ file, says }) => {
    const watched = await clips.watch(clipPath('').replace('.mp4', file), order);
    expect(watched).toMatchObject({ ok: false, error: { kind: 'unreadable', words: expect.stringMatching(says) } });
  });
});
