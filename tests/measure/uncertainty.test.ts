import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { type RangeEvidence, rangeUncertainty } from '../../src/measure/uncertainty.ts';
import { deg } from '../../src/units.ts';

/** A foot tap as it is seen three metres away, everything well. */
const GOOD: RangeEvidence = {
  angle: 'ankle-dorsiflexion',
  source: 'flow',
  rangeDeg: deg(14),
  noiseDeg: 0.1,
  matchDeg: 0.7,
  closureDeg: 0,
  segmentsPx: [60, 120],
  cameraTurnDeg: deg(0),
};

const widened = (change: Partial<RangeEvidence>) => rangeUncertainty({ ...GOOD, ...change }) - rangeUncertainty(GOOD);

test.each<[string, Partial<RangeEvidence>]>([
  ['the angle jitters', { noiseDeg: 0.8 }],
  ['the matches are unsure', { matchDeg: 2.5 }],
  ['the foot does not come back in the picture alone', { closureDeg: 1 }],
  ['the foot is small in the picture', { segmentsPx: [20, 40] }],
  ['the camera is turned', { cameraTurnDeg: deg(-20) }],
  ['the camera\u2019s turn is not known', { cameraTurnDeg: null }],
  ['the motion was lost now and then', { source: 'fused' }],
  ['the movement is larger', { rangeDeg: deg(40) }],
])('an interval is wider when %s', (_, change) => {
  expect(widened(change)).toBeGreaterThan(0.02);
});

describe('the view', () => {
  test('a tap seen by a camera turned by 25 degrees is out by what the turn\u2019s own error does to the cosine', () => {
    const stretched = (turn: number) => GOOD.rangeDeg / Math.cos((turn * Math.PI) / 180);
    const [square, turned] = [0, 25].map((turn) => rangeUncertainty({ ...GOOD, cameraTurnDeg: deg(turn) }) / 2.16);
    const added = Math.sqrt((turned as number) ** 2 - (square as number) ** 2 + (stretched(3.5) - stretched(0)) ** 2);
    expect(added).toBeCloseTo(stretched(28.5) - stretched(25), 6);
  });

  test('a raise from a turned camera is corrected, so that only the turn\u2019s own error counts', () => {
    const raise = { ...GOOD, angle: 'leg-elevation', rangeDeg: deg(50), segmentsPx: [90, 90] } as const;
    const [straight, turned] = [deg(0), deg(12)].map((cameraTurnDeg) => rangeUncertainty({ ...raise, cameraTurnDeg }));
    expect(turned as number).toBeLessThan((straight as number) + 1);
  });
});

test('an interval never narrows when anything gets worse, and is never empty', () => {
  const worse = fc.record({
    noiseDeg: fc.double({ min: 0, max: 5, noNaN: true }),
    matchDeg: fc.double({ min: 0, max: 10, noNaN: true }),
    closureDeg: fc.double({ min: 0, max: 10, noNaN: true }),
  });
  fc.assert(
    fc.property(
      worse,
      worse,
      fc.constantFrom('ankle-dorsiflexion', 'leg-elevation', 'knee-flexion'),
      fc.integer({ min: 0, max: 110 }),
      (a, more, angle, range) => {
        const base = { ...GOOD, ...a, angle, rangeDeg: deg(range) } as const;
        const added = {
          ...base,
          noiseDeg: a.noiseDeg + more.noiseDeg,
          matchDeg: a.matchDeg + more.matchDeg,
          closureDeg: a.closureDeg + more.closureDeg,
        };
        expect(rangeUncertainty(base)).toBeGreaterThan(0);
        expect(rangeUncertainty(added)).toBeGreaterThanOrEqual(rangeUncertainty(base));
      },
    ),
  );
});
