import { exerciseOf } from '../../src/exercises/catalogue.ts';
import type { Observation } from '../../src/measure/observation.ts';
import type { SetSpec } from '../../src/measure/set.ts';
import type { StickerPoint, StickersSeen } from '../../src/measure/stickers-seen.ts';
import type { StickerName } from '../../src/stickers/sticker-name.ts';
import { ms, px } from '../../src/units.ts';

/** A foot seen from its inner side, and what happens to it. Angles up positive, from the resting line. */
export interface StickerFilm {
  readonly lastsMs: number;
  readonly toeDeg: (tMs: number) => number;
  /** The second toe carries a sticker and stands so. */
  readonly otherDeg?: (tMs: number) => number;
  /** Turn of the whole foot about its heel. */
  readonly footDeg?: (tMs: number) => number;
  readonly toes?: 'left' | 'right';
  readonly fps?: number;
  /** Standard deviation of a centre, each way, px. */
  readonly noisePx?: number;
  readonly seed?: number;
  /** What is hidden, guessed at, or not to be believed. */
  readonly hidden?: (tMs: number) => readonly StickerName[];
  readonly bridged?: (tMs: number) => readonly StickerName[];
  readonly implausible?: (tMs: number) => boolean;
}

/** Bend of the line through the stickers at rest: they do not lie in a straight line. */
const RESTING_BEND_DEG = -7;
const TOE_PX = 40;
const FOOT_PX = 84;

/** Uniform in [0, 1), the same for the same seed. Mulberry32. */
function uniform(seed: number): () => number {
  let a = seed >>> 0;
  return () => {
    a = (a + 0x6d2b79f5) >>> 0;
    let t = Math.imul(a ^ (a >>> 15), a | 1);
    t ^= t + Math.imul(t ^ (t >>> 7), t | 61);
    return ((t ^ (t >>> 14)) >>> 0) / 4294967296;
  };
}

/** What a sticker worker would tell of the film, frame by frame. */
export function stickerFilm(film: StickerFilm): readonly Observation[] {
  const { lastsMs, toeDeg, otherDeg, footDeg = () => 0, toes = 'left', fps = 30, noisePx = 0.15, seed = 1 } = film;
  const next = uniform(seed);
  const gauss = () => noisePx * Math.sqrt(-2 * Math.log(1 - next())) * Math.cos(2 * Math.PI * next());
  const across = toes === 'left' ? -1 : 1;
  const frames = Math.floor((lastsMs * fps) / 1000);
  return Array.from({ length: frames }, (_, i) => {
    const tMs = (i * 1000) / fps;
    const bridged = film.bridged?.(tMs) ?? [];
    const hidden = film.hidden?.(tMs) ?? [];
    const point = (name: StickerName, x: number, y: number): StickerPoint | null =>
      hidden.includes(name)
        ? null
        : { x: px(x + gauss()), y: px(y + gauss()), errorPx: px(0.15), bridged: bridged.includes(name) };
    const along = (from: { x: number; y: number }, upDeg: number, lengthPx: number) => ({
      x: from.x + across * lengthPx * Math.cos((upDeg * Math.PI) / 180),
      y: from.y - lengthPx * Math.sin((upDeg * Math.PI) / 180),
    });
    const arch = { x: 320 - across * 60, y: 300 };
    const foot = 4 + footDeg(tMs);
    const knuckle = along(arch, foot, FOOT_PX);
    const tip = along(knuckle, foot + RESTING_BEND_DEG + toeDeg(tMs), TOE_PX);
    const other = along(knuckle, foot - 20 + (otherDeg?.(tMs) ?? 0), 30);
    const stickers: StickersSeen = {
      points: {
        tip: point('tip', tip.x, tip.y),
        knuckle: point('knuckle', knuckle.x, knuckle.y),
        arch: point('arch', arch.x, arch.y),
        ...(otherDeg ? { 'toe-2': point('toe-2', other.x, other.y) } : {}),
      },
      implausible: film.implausible?.(tMs) ?? false,
    };
    return { tMs: ms(tMs), landmarks: null, motion: null, camera: null, brightness: 110, stickers };
  });
}

/** Lifts that rise and fall within `lastsMs`, one every `everyMs` from `fromMs` on; 0 between them. */
export const lifts =
  (heights: readonly number[], { fromMs = 1500, everyMs = 1600, lastsMs = 1200 } = {}) =>
  (tMs: number): number => {
    const n = Math.floor((tMs - fromMs) / everyMs);
    const into = tMs - fromMs - n * everyMs;
    const height = n >= 0 ? (heights[n] ?? 0) : 0;
    return into < lastsMs ? (height * (1 - Math.cos((2 * Math.PI * into) / lastsMs))) / 2 : 0;
  };

export const toeSpec = (over: Partial<SetSpec> = {}): SetSpec => ({
  exercise: exerciseOf('toe-lift'),
  side: 'left',
  size: { width: 640, height: 480 },
  targetReps: null,
  endsItself: false,
  ...over,
});
