/** Foot taps through three stickers, drawn, followed and measured: how far their ranges are out. `EVENSIDE_STICKER_SCENES=100`: so many films. */
import { afterEach, beforeEach, expect, test, vi } from 'vitest';
import { rangeErrorOf } from '../../src/compare/range-error.ts';
import { exerciseOf } from '../../src/exercises/catalogue.ts';
import { uniformFrom } from '../../src/flow/prng.ts';
import { stickerMeasure } from '../../src/measure/sticker-set.ts';
import { StickerService } from '../../src/run/sticker-service.ts';
import type { Spot } from '../../src/stickers/rgba-picture.ts';
import { ms } from '../../src/units.ts';
import { lifts } from '../measure/sticker-builder.ts';
import { BLUE, type Disc, draw, GREEN, PINK } from '../stickers/drawn-picture.ts';
import { CanvasStandIn, drawnFrame } from './drawn-frames.ts';

beforeEach(() => vi.stubGlobal('OffscreenCanvas', CanvasStandIn));
afterEach(() => vi.unstubAllGlobals());

const FILMS = Number(process.env.EVENSIDE_STICKER_SCENES ?? 1);
const SIZE = { width: 200, height: 150 };
const FPS = 20;

const towards = ({ x, y }: Spot, deg: number, px: number): Spot => ({
  x: x + px * Math.cos((deg * Math.PI) / 180),
  y: y + px * Math.sin((deg * Math.PI) / 180),
});

/** One film of six taps. @returns how far each tap's range is out, deg */
function film(seed: number): readonly number[] {
  const random = uniformFrom(seed);
  const heights = Array.from({ length: 6 }, () => 5 + 25 * random());
  const tapAt = lifts(heights, { fromMs: 1200, everyMs: 1100, lastsMs: 900 });
  const [noise, light, radiusPx] = [1 + 7 * random(), 0.5 + 0.5 * random(), 3.5 + 2 * random()];
  const colour = [GREEN, PINK, BLUE][seed % 3] ?? GREEN;
  const ankle = { x: 150 + random(), y: 105 + random() };
  const lean = 80 + 20 * random();
  const service = new StickerService();
  service.begin({ angle: 'ankle-dorsiflexion', start: { kind: 'find', colour: null } });
  const size = SIZE;
  const spec = { exercise: exerciseOf('foot-tap'), side: 'left', size, targetReps: null, endsItself: false } as const;
  let state = stickerMeasure.startSet(spec);
  const disc = (at: Spot): Disc => ({ at, radiusPx, colour });
  for (let i = 0; i < 8.4 * FPS; i++) {
    const tMs = (i * 1000) / FPS;
    // The foot points to the left and down at rest, and turns up about the heel's side.
    const discs = [disc(ankle), disc(towards(ankle, -lean, 62)), disc(towards(ankle, 165 + tapAt(tMs), 78))];
    const image = drawnFrame(draw({ ...size, discs, noise, light, seed: 500 * seed + i }));
    state = stickerMeasure.stepSet(state, service.observe(image, 0, ms(tMs))).state;
  }
  const { reps } = stickerMeasure.finishSet(state);
  expect(reps.map((rep) => rep.source)).toEqual(heights.map(() => 'stickers'));
  return reps.map((rep, i) => rep.rangeDeg - (heights[i] as number));
}

test('their ranges scatter by less than half of the error that comparisons count with', {
  timeout: 30_000 + 20_000 * FILMS,
}, () => {
  const off = Array.from({ length: FILMS }, (_, i) => film(i + 1)).flat();
  const mean = off.reduce((sum, each) => sum + each, 0) / off.length;
  const sd = Math.sqrt(off.reduce((sum, each) => sum + (each - mean) ** 2, 0) / (off.length - 1));
  if (FILMS > 1)
    process.stdout.write(
      `${FILMS} films, ${off.length} taps: mean ${mean.toFixed(3)}, standard deviation ${sd.toFixed(3)} deg\n`,
    );
  const { semDeg } = rangeErrorOf('foot-tap', 'legs', 'stickers');
  expect(2 * sd).toBeLessThan(semDeg);
  expect(Math.abs(mean)).toBeLessThan(semDeg / 2);
});
