import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { uniformFrom } from '../../src/flow/prng.ts';
import { facingOfStickers, stickerAngle } from '../../src/measure/sticker-angle.ts';
import type { StickersSeen } from '../../src/measure/stickers-seen.ts';
import type { Spot } from '../../src/stickers/rgba-picture.ts';
import type { StickerName } from '../../src/stickers/sticker-name.ts';
import { px } from '../../src/units.ts';
import { FOOT, footSpots } from '../stickers/moving-foot.ts';

type Placed = Readonly<Partial<Record<StickerName, Spot>>>;

const seen = (spots: Placed, errorPx: (name: string) => number = () => 0.2): StickersSeen => ({
  points: Object.fromEntries(
    Object.entries(spots).map(([name, { x, y }]) => [name, { x: px(x), y: px(y), errorPx: px(errorPx(name)), bridged: false }]),
  ),
  implausible: false,
});
const mirrored = (spots: Placed): Placed =>
  Object.fromEntries(Object.entries(spots).map(([name, { x, y }]) => [name, { x: -x, y }]));
const angleOf = (of: StickersSeen, angle: 'great-toe-extension' | 'ankle-dorsiflexion') => {
  const facing = facingOfStickers(of, angle);
  const found = facing && stickerAngle(of, angle, facing);
  if (!found) throw new Error('the test requires an angle');
  return { facing, ...found };
};

describe('the great toe by stickers', () => {
  test('goes up positive, whichever way it points', () => {
    fc.assert(
      fc.property(fc.integer({ min: -60, max: 90 }), fc.integer({ min: -50, max: 50 }), (liftDeg, tilt) => {
        const spots = footSpots(liftDeg, { ...FOOT, lineDeg: 180 + tilt });
        expect(angleOf(seen(spots), 'great-toe-extension').deg).toBeCloseTo(liftDeg, 6);
        expect(angleOf(seen(mirrored(spots)), 'great-toe-extension').deg).toBeCloseTo(liftDeg, 6);
      }),
    );
  });

  test('points where the tip lies from the arch', () => {
    expect(facingOfStickers(seen(footSpots(0)), 'great-toe-extension')).toBe('left');
    expect(facingOfStickers(seen(mirrored(footSpots(0))), 'great-toe-extension')).toBe('right');
    const { tip, knuckle } = footSpots(0);
    expect(facingOfStickers(seen({ tip, knuckle }), 'great-toe-extension')).toBeNull();
  });

  test('1.96 times the error it says holds 95 of 100 angles of centres that are out by what they say', () => {
    const random = uniformFrom(4);
    const normal = (): number => Math.sqrt(-2 * Math.log(1 - random())) * Math.cos(2 * Math.PI * random());
    const errors: Readonly<Record<string, number>> = { arch: 0.3, knuckle: 0.15, tip: 0.2 };
    const errorPx = (name: string): number => errors[name] ?? Number.NaN;
    const off = (name: string, { x, y }: Spot): Spot => ({ x: x + errorPx(name) * normal(), y: y + errorPx(name) * normal() });
    const noisy = (): Placed => Object.fromEntries(Object.entries(footSpots(25)).map(([name, at]) => [name, off(name, at)]));
    const runs = 4000;
    const inside = Array.from({ length: runs }, () => angleOf(seen(noisy(), errorPx), 'great-toe-extension')).filter(
      ({ deg, variance }) => Math.abs(deg - 25) <= 1.96 * Math.sqrt(variance),
    ).length;
    expect(inside / runs).toBeGreaterThan(0.94);
    expect(inside / runs).toBeLessThan(0.96);
  });

  test('has no angle without one of its stickers, or with distances that cannot be', () => {
    const all = seen(footSpots(5));
    expect(stickerAngle(null, 'great-toe-extension', 'left')).toBeNull();
    expect(stickerAngle({ ...all, implausible: true }, 'great-toe-extension', 'left')).toBeNull();
    for (const name of ['tip', 'knuckle', 'arch'] as const) {
      const lost = { ...all, points: { ...all.points, [name]: null } };
      expect(stickerAngle(lost, 'great-toe-extension', 'left')).toBeNull();
    }
    // Another toe's sticker is another matter.
    const other = { ...all, points: { ...all.points, 'toe-2': null } };
    expect(stickerAngle(other, 'great-toe-extension', 'left')?.deg).toBeCloseTo(5, 6);
  });
});

test('the ankle by stickers is 0 with the foot square to the shin, and the forefoot up is positive, whichever way the toes point', () => {
  for (const upDeg of [-40, 0, 15]) {
    const up = (upDeg * Math.PI) / 180;
    const forefoot = { x: 100 - 50 * Math.cos(up), y: 100 - 50 * Math.sin(up) };
    const spots: Placed = { shin: { x: 100, y: 40 }, ankle: { x: 100, y: 100 }, forefoot };
    const left = angleOf(seen(spots), 'ankle-dorsiflexion');
    const right = angleOf(seen(mirrored(spots)), 'ankle-dorsiflexion');
    expect([left.facing, right.facing]).toEqual(['left', 'right']);
    expect(left.deg).toBeCloseTo(upDeg, 6);
    expect(right.deg).toBeCloseTo(upDeg, 6);
    expect(left.variance).toBeCloseTo(right.variance, 6);
  }
});
