import fc from 'fast-check';
import { expect, test } from 'vitest';
import { arrange, toesSeenFromInside } from '../../src/stickers/arrange.ts';
import type { Spot } from '../../src/stickers/rgba-picture.ts';
import { FOOT, footSpots } from './moving-foot.ts';

const dot = (at: Spot) => ({ at });

test('three dots of a foot are told apart in whatever order, turned whichever way', () => {
  fc.assert(
    fc.property(
      fc.integer({ min: -180, max: 180 }),
      fc.integer({ min: -20, max: 70 }),
      fc.double({ min: 1.2, max: 4, noNaN: true }),
      fc.shuffledSubarray(['tip', 'knuckle', 'arch'] as const, { minLength: 3 }),
      (lineDeg, liftDeg, ratio, order) => {
        const spots = footSpots(liftDeg, { ...FOOT, lineDeg, archToKnuckle: 30 * ratio, knuckleToTip: 30 });
        const [a, b, c] = order.map((name) => dot(spots[name])) as [{ at: Spot }, { at: Spot }, { at: Spot }];
        const arranged = arrange([a, b, c]);
        expect(arranged).toEqual({
          ok: true,
          value: { tip: dot(spots.tip), knuckle: dot(spots.knuckle), arch: dot(spots.arch) },
        });
      },
    ),
  );
});

test('where lengths are alike, the way the toes point decides', () => {
  const spots = footSpots(0, { ...FOOT, archToKnuckle: 40, knuckleToTip: 41, lineDeg: 180 });
  const three = [dot(spots.arch), dot(spots.tip), dot(spots.knuckle)] as const;
  expect(arrange(three, toesSeenFromInside('right'))).toMatchObject({ ok: true, value: { tip: dot(spots.tip) } });
  expect(arrange(three, toesSeenFromInside('left'))).toMatchObject({ ok: true, value: { tip: dot(spots.arch) } });
});

test('dots that lie as on no foot are refused', () => {
  const far = [dot({ x: 0, y: 0 }), dot({ x: 10, y: 0 }), dot({ x: 200, y: 0 })] as const;
  expect(arrange(far)).toMatchObject({ ok: false, error: { kind: 'not-as-on-a-foot', bendDeg: 0, ratio: 19 } });
});
