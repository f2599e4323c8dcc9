import { describe, expect, test } from 'vitest';
import { fittedPeak } from '../../src/measure/fitted-peak.ts';
import { fittedRest } from '../../src/measure/fitted-rest.ts';
import type { RawAngle } from '../../src/measure/movements.ts';
import { ms } from '../../src/units.ts';
import { GRAIN } from '../stickers/drawn-picture.ts';

const PEAK_DEG = 33;
const LIFT_MS = 250;
const HOLD_MS = 40;
const REST_MS = 120;
const PERIOD_MS = 2 * LIFT_MS + HOLD_MS + REST_MS;

/** Minimum jerk. */
const ease = (u: number): number => (u <= 0 ? 0 : u >= 1 ? 1 : u ** 3 * (10 - 15 * u + 6 * u * u));
/** A quick lift over and over; the first begins at 0. */
function liftAt(tMs: number): number {
  const t = ((tMs % PERIOD_MS) + PERIOD_MS) % PERIOD_MS;
  return PEAK_DEG * (t < LIFT_MS + HOLD_MS ? ease(t / LIFT_MS) : 1 - ease((t - LIFT_MS - HOLD_MS) / LIFT_MS));
}

/** Frames of a camera that begins some time before the first lift. */
function filmed(fps: number, beginMs: number, noiseDeg: number, seed = 0): readonly RawAngle[] {
  return Array.from({ length: Math.ceil((2 * PERIOD_MS * fps) / 1000) }, (_, i) => {
    const tMs = beginMs + (i * 1000) / fps;
    return { tMs: ms(tMs), measured: { deg: liftAt(tMs) + noiseDeg * (GRAIN[seed + i] as number), variance: 0.01 } };
  });
}

/** As movements are found: from a tenth of the way up to a tenth of the way down, the highest frame its peak. */
function movementIn(frames: readonly RawAngle[], fromMs: number) {
  const within = frames.filter(({ tMs }) => tMs >= fromMs && tMs <= fromMs + PERIOD_MS - REST_MS);
  const up = within.filter(({ tMs }) => liftAt(tMs) >= 0.1 * PEAK_DEG);
  const highest = within.reduce((a, b) => (liftAt(b.tMs) > liftAt(a.tMs) ? b : a));
  return { startMs: up[0]?.tMs as number, peakMs: highest.tMs, endMs: up.at(-1)?.tMs as number, rangeDeg: PEAK_DEG };
}

describe('a quick lift filmed with few frames', () => {
  test.each([20, 24, 30, 60])('has the height of its highest frame: %d a second', (fps) => {
    for (let beginMs = -100; beginMs < -50; beginMs += 7) {
      const frames = filmed(fps, beginMs, 0);
      const movement = movementIn(frames, 0);
      expect(Math.abs((fittedPeak(frames, movement, 0.1) as number) - liftAt(movement.peakMs))).toBeLessThan(0.3);
    }
  });

  test('has a rest of two or three frames, and they tell it', () => {
    for (let beginMs = -100; beginMs < -60; beginMs += 7) {
      const frames = filmed(24, beginMs, 0);
      const rest = fittedRest(frames, movementIn(frames, PERIOD_MS), movementIn(frames, 0));
      if (rest !== null) expect(Math.abs(rest)).toBeLessThan(0.15);
      else
        expect(frames.filter(({ tMs }) => liftAt(tMs) === 0 && tMs > PERIOD_MS - REST_MS && tMs < PERIOD_MS).length).toBeLessThan(
          4,
        );
    }
  });
});

test('the noisier the frames, the more of them tell a peak: its mean error is under half of one frame', () => {
  const noiseDeg = 1.5;
  let square = 0;
  const sets = 60;
  for (let seed = 0; seed < sets; seed++) {
    const frames = filmed(60, -100, noiseDeg, 500 * seed);
    square += ((fittedPeak(frames, movementIn(frames, 0), noiseDeg) as number) - PEAK_DEG) ** 2 / sets;
  }
  expect(Math.sqrt(square)).toBeLessThan(noiseDeg / 2);
});

test('two frames make no peak', () => {
  const frames = filmed(24, -100, 0).slice(0, 2);
  expect(fittedPeak(frames, { startMs: -100, peakMs: -100, endMs: 300, rangeDeg: 20 }, 0.1)).toBeNull();
});
