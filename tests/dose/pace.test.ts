import fc from 'fast-check';
import { expect, test } from 'vitest';
import { paceAt, repMs } from '../../src/dose/pace.ts';
import { ms } from '../../src/units.ts';

const PACE = { tempoS: 4, holdS: 2 };

test.each([
  [0, 1, 'out', 0],
  [1000, 1, 'out', 0.5],
  [2000, 1, 'hold', 0],
  [3500, 1, 'hold', 0.75],
  [4000, 1, 'back', 0],
  [5999, 1, 'back', 0.9995],
  [6000, 2, 'out', 0],
] as const)('after %i ms: repetition %i, %s, %d of it over', (elapsed, rep, beat, share) => {
  expect(paceAt(ms(elapsed), PACE)).toEqual({ rep, beat, share });
});

test('without a hold there is none', () => {
  const beats = Array.from({ length: 40 }, (_, i) => paceAt(ms(i * 100), { tempoS: 2, holdS: 0 }).beat);
  expect(new Set(beats)).toEqual(new Set(['out', 'back']));
});

test('as many repetitions are over as whole ones fit into the time', () => {
  fc.assert(
    fc.property(
      fc.integer({ min: 0, max: 600_000 }),
      fc.integer({ min: 1, max: 10 }),
      fc.integer({ min: 0, max: 20 }),
      (at, tempoS, holdS) => {
        const { rep, share } = paceAt(ms(at), { tempoS, holdS });
        expect(rep).toBe(Math.floor(at / repMs({ tempoS, holdS })) + 1);
        expect(share).toBeGreaterThanOrEqual(0);
        expect(share).toBeLessThan(1);
      },
    ),
  );
});
