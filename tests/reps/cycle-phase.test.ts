import fc from 'fast-check';
import { expect, test } from 'vitest';
import { uniformFrom } from '../../src/flow/prng.ts';
import { type Fundamental, fundamentalOf, meanPhase, phaseBetween } from '../../src/reps/cycle-phase.ts';
import { deg, ms, wrapped } from '../../src/units.ts';

const PERIOD = 2000;
const wave = (delayDeg: number, swing: number, everyMs = 25, shape = (turn: number) => Math.cos(turn)) =>
  Array.from({ length: Math.round(PERIOD / everyMs) }, (_, i) => ({
    tMs: ms(i * everyMs),
    deg: deg(7 + (swing / 2) * shape((2 * Math.PI * i * everyMs) / PERIOD - (delayDeg * Math.PI) / 180)),
  }));
const fitted = (samples: ReturnType<typeof wave>): Fundamental => {
  const found = fundamentalOf(samples, ms(0), ms(PERIOD), 0);
  if (!found) throw new Error('no fundamental');
  return found;
};

test('two sines with a stated lag give that lag and their swings, whatever samples are missing', () => {
  fc.assert(
    fc.property(
      fc.integer({ min: -179, max: 179 }),
      fc.integer({ min: -179, max: 179 }),
      fc.double({ min: 5, max: 60, noNaN: true }),
      fc.array(fc.integer({ min: 0, max: 79 }), { maxLength: 40 }),
      (delay, lag, swing, lost) => {
        const earlier = fitted(wave(delay, 30));
        const later = fitted(wave(delay + lag, swing).filter((_, i) => !lost.includes(i)));
        expect(wrapped(phaseBetween(earlier, later).deg - lag)).toBeCloseTo(0, 6);
        expect(later.swingDeg).toBeCloseTo(swing, 6);
      },
    ),
    { seed: 11 },
  );
});

/** An outside reference: the lag of the highest circular cross-correlation, in steps of one sample (the textbook way, from memory). */
function correlationLag(a: readonly { readonly deg: number }[], b: readonly { readonly deg: number }[]): number {
  const mean = (x: readonly { readonly deg: number }[]) => x.reduce((sum, s) => sum + s.deg, 0) / x.length;
  const [ma, mb] = [mean(a), mean(b)];
  const at = (k: number) => a.reduce((sum, s, i) => sum + (s.deg - ma) * ((b[(i + k) % b.length]?.deg ?? 0) - mb), 0);
  const best = a.map((_, k) => k).reduce((high, k) => (at(k) > at(high) ? k : high), 0);
  return wrapped((360 * best) / a.length);
}

test.each([-150, -90, -45, 0, 36, 60, 120])(
  'a movement that is no sine, late by %i degrees: as the cross-correlation says',
  (lag) => {
    const peaked = (turn: number) => 2 * ((1 + Math.cos(turn)) / 2) ** 3 - 1;
    const [a, b] = [wave(20, 30, 5, peaked), wave(20 + lag, 20, 5, peaked)];
    expect(Math.abs(wrapped(phaseBetween(fitted(a), fitted(b)).deg - correlationLag(a, b)))).toBeLessThan(1);
  },
);

test('the stated error is the scatter that noise makes', () => {
  const random = uniformFrom(5);
  // Twelve uniform numbers less six: near enough normal, standard deviation 1.
  const normal = () => Array.from({ length: 12 }, random).reduce((a, b) => a + b, -6);
  const halves = Array.from({ length: 400 }, () => {
    const found = fundamentalOf(
      wave(0, 30).map((s) => ({ ...s, deg: deg(s.deg + 3 * normal()) })),
      ms(0),
      ms(PERIOD),
      3,
    );
    return { off: (found?.swingDeg ?? 0) / 2 - 15, said: found?.errorDeg ?? 0 };
  });
  const scatter = Math.sqrt(halves.reduce((sum, h) => sum + h.off ** 2, 0) / halves.length);
  expect(scatter / (halves[0]?.said ?? 0)).toBeGreaterThan(0.85);
  expect(scatter / (halves[0]?.said ?? 0)).toBeLessThan(1.15);
});

test('too few samples, or all at one moment of the cycle, give nothing', () => {
  expect(fundamentalOf(wave(0, 30).slice(0, 4), ms(0), ms(PERIOD), 1)).toBeNull();
  expect(fundamentalOf(Array(9).fill({ tMs: ms(500), deg: deg(3) }), ms(0), ms(PERIOD), 1)).toBeNull();
});

test('the mean of phases goes round the circle and leans to the surer one', () => {
  const phase = (x: number, errorDeg = 5) => ({ deg: deg(x), errorDeg: deg(errorDeg) });
  expect(Math.abs(meanPhase([phase(170), phase(-170)])?.deg ?? 0)).toBeCloseTo(180, 6);
  expect(meanPhase([phase(10), phase(50)])?.deg).toBeCloseTo(30, 6);
  expect(meanPhase([phase(10), phase(50)])?.errorDeg).toBeCloseTo(5 / Math.SQRT2, 6);
  expect(meanPhase([phase(10, 1), phase(50, 10)])?.deg).toBeLessThan(11);
  expect(meanPhase([phase(0), phase(180)])).toBeNull();
  expect(meanPhase([])).toBeNull();
});
