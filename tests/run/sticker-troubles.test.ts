/** Films drawn frame by frame, seen by the worker's side and measured as in a set: what hides a sticker is told, nothing is counted meanwhile, and a replay tells the same. */
import { afterEach, beforeEach, expect, test, vi } from 'vitest';
import { exerciseOf } from '../../src/exercises/catalogue.ts';
import type { Observation } from '../../src/measure/observation.ts';
import type { SetSpec } from '../../src/measure/set.ts';
import { stickerMeasure } from '../../src/measure/sticker-set.ts';
import { unseenOf } from '../../src/measure/unseen-of.ts';
import { measureRecording } from '../../src/record/measure-recording.ts';
import { decodeRecording, encodeRecording } from '../../src/record/recording.ts';
import { stickerObserver } from '../../src/run/sticker-client.ts';
import { StickerService } from '../../src/run/sticker-service.ts';
import { ms } from '../../src/units.ts';
import { lifts } from '../measure/sticker-builder.ts';
import { type Disc, draw, GREEN } from '../stickers/drawn-picture.ts';
import { type Foot, footDiscs, footSpots } from '../stickers/moving-foot.ts';
import { CanvasStandIn, drawnFrame } from './drawn-frames.ts';

beforeEach(() => vi.stubGlobal('OffscreenCanvas', CanvasStandIn));
afterEach(() => vi.unstubAllGlobals());

const SIZE = { width: 240, height: 140 };
const FOOT: Foot = { arch: { x: 170, y: 80 }, archToKnuckle: 70, knuckleToTip: 36, lineDeg: 177 };
const FPS = 24;
const LASTS_MS = 9800;
const HEIGHTS = [24, 27, 25, 22, 26];
const liftDeg = lifts(HEIGHTS);
/** The second and the third lift happen while the trouble lasts. */
const [FROM_MS, TO_MS] = [3000, 5900];
const SPEC: SetSpec = { exercise: exerciseOf('toe-lift'), side: 'left', size: SIZE, targetReps: null, endsItself: false };

/** What lies behind the stickers, and what before them. */
interface Trouble {
  readonly behind?: readonly Disc[];
  readonly before?: readonly Disc[];
}

/** What a session hears of the film. */
async function watched(troubleAt: (tMs: number) => Trouble): Promise<readonly Observation[]> {
  const service = new StickerService();
  const observer = stickerObserver(
    {
      begin: async (task) => service.begin(task),
      observe: async ({ image, turn, tMs }) => service.observe(image, turn, tMs),
    },
    { kind: 'find', colour: null },
  );
  await observer.begin({ exercise: SPEC.exercise, side: SPEC.side, head: 'find' });
  const seen: Observation[] = [];
  for (let i = 0; i < (LASTS_MS * FPS) / 1000; i++) {
    const tMs = (i * 1000) / FPS;
    const { behind = [], before = [] } = troubleAt(tMs);
    const discs = [...behind, ...footDiscs(footSpots(liftDeg(tMs), FOOT), 6), ...before];
    const image = drawnFrame(draw({ ...SIZE, discs, noise: 2, seed: i + 1 }));
    seen.push(await observer.observe({ image, turn: 0, tMs: ms(tMs) }));
  }
  return seen;
}

/** As a session measures it. */
function measured(observations: readonly Observation[]) {
  let state = stickerMeasure.startSet(SPEC);
  const views = [];
  const kinds = [];
  for (const seen of observations) {
    const step = stickerMeasure.stepSet(state, seen);
    state = step.state;
    views.push(step.view);
    for (const { kind } of step.events) kinds.push({ kind, tMs: seen.tMs });
  }
  return { views, kinds, result: stickerMeasure.finishSet(state) };
}

const WHITE = [255, 255, 255] as const;
/** A window's light that wanders over the tip, wherever it is, and away again. */
const glint = (tMs: number): Trouble => {
  const tip = footSpots(liftDeg(tMs), FOOT).tip;
  const away = 40 * Math.max(0, FROM_MS - tMs, tMs - TO_MS) * 0.005;
  return away > 60 ? {} : { before: [{ at: { x: tip.x + 2 - away, y: tip.y - 1 }, radiusPx: 5, colour: WHITE }] };
};
/** A towel of the sticker's colour that is pushed under the toe, and taken away. */
const towel = (tMs: number): Trouble => {
  const away = 90 * Math.max(0, FROM_MS - tMs, tMs - TO_MS) * 0.005;
  return away > 120 ? {} : { behind: [{ at: { x: 40 - away, y: 62 }, radiusPx: 50, colour: GREEN }] };
};

test.each([
  ['glare', 'sticker-glare', glint],
  ['like-surround', 'sticker-like-surround', towel],
] as const)(
  '%s: it is told, counting stops while it lasts and goes on after; a replay says the same',
  async (why, warning, troubleAt) => {
    const seen = await watched(troubleAt);
    const { views, kinds, result } = measured(seen);

    const during = seen.filter(({ tMs }) => tMs >= FROM_MS && tMs <= TO_MS);
    expect(during.map(({ stickers }) => unseenOf(stickers ?? null))).toEqual(during.map(() => why));
    const apart = seen.filter(({ tMs }) => tMs < FROM_MS - 400 || tMs > TO_MS + 400);
    expect(apart.every(({ stickers }) => unseenOf(stickers ?? null) === null)).toBe(true);

    const times = (kind: string) => kinds.filter((k) => k.kind === kind).map((k) => k.tMs as number);
    expect(times('lost')).toHaveLength(1);
    expect(times('found')).toHaveLength(1);
    expect(times('found')[0]).toBeGreaterThan(TO_MS - 1);
    const [lostMs, foundMs] = [times('lost')[0] as number, times('found')[0] as number];
    expect(lostMs).toBeLessThan(FROM_MS + 1500);
    expect(times('rep').some((tMs) => tMs > lostMs && tMs < foundMs)).toBe(false);
    expect(
      views.filter((_, i) => (seen[i]?.tMs ?? 0) > lostMs && (seen[i]?.tMs ?? 0) < foundMs).every((v) => v.phase === 'lost'),
    ).toBe(true);
    // The first lift and the last two, none of those that nobody saw.
    const whole = result.reps.filter((rep) => !rep.flags.includes('doubtful') && !rep.flags.includes('tracking-gap'));
    const near = HEIGHTS.map((height, i) => ({ height, peakMs: 1500 + 1600 * i + 600 })).filter((_, i) => i !== 1 && i !== 2);
    expect(whole.map((rep) => rep.complete)).toEqual(near.map(() => true));
    whole.forEach((rep, i) => {
      expect(Math.abs(rep.rangeDeg - (near[i]?.height ?? 0))).toBeLessThan(1);
      expect(Math.abs(rep.peakMs - (near[i]?.peakMs ?? 0))).toBeLessThan(150);
    });
    expect(result.quality.warnings).toEqual(['sticker-lost', warning]);

    const text = encodeRecording(seen, {
      source: { file: 'camera', ...SIZE, durationMs: ms(LASTS_MS) },
      model: 'stickers',
      exercise: 'toe-lift',
      side: 'left',
    });
    const recording = decodeRecording(text);
    if (!recording.ok) throw new Error(recording.error.kind);
    expect(recording.value.observations).toEqual(seen);
    expect(measureRecording(recording.value)).toEqual(result);
  },
);
