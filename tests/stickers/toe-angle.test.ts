import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { uniformFrom } from '../../src/flow/prng.ts';
import { bendAt, restBend, toesPoint } from '../../src/stickers/line-angle.ts';
import type { Spot } from '../../src/stickers/rgba-picture.ts';
import { stickerAnkle, toeBend, toeExtension, unwrappedAngle } from '../../src/stickers/toe-angle.ts';
import { deg } from '../../src/units.ts';
import { FOOT, footSpots } from './moving-foot.ts';

const placed = (at: Spot, errorPx = 0.2) => ({ at, errorPx });
const seen = (at: Spot) => ({ ...placed(at), how: 'seen' as const });
const bend = (liftDeg: number, foot = FOOT) => {
  const { tip, knuckle, arch } = footSpots(liftDeg, foot);
  return bendAt(placed(arch), placed(knuckle), placed(tip));
};
const resting = (liftDeg: number, foot = FOOT) => {
  const rest = restBend([bend(liftDeg, foot)]);
  if (!rest) throw new Error('the test requires a rest');
  return rest;
};

describe('the great toe', () => {
  test('goes up positive, whichever way it points, from its own resting line', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: -30, max: 30 }),
        fc.integer({ min: -40, max: 90 }),
        fc.integer({ min: -50, max: 50 }),
        (rest, lift, tilt) => {
          const left = { ...FOOT, lineDeg: 180 + tilt };
          const up = toeExtension(bend(rest + lift, left), resting(rest, left), 'left');
          expect(up.angleDeg).toBeCloseTo(lift, 6);
          // The same foot in a mirror.
          const mirrored = ({ x, y }: Spot): Spot => ({ x: -x, y });
          const other = (liftDeg: number) => {
            const { tip, knuckle, arch } = footSpots(liftDeg, left);
            return bendAt(placed(mirrored(arch)), placed(mirrored(knuckle)), placed(mirrored(tip)));
          };
          const still = restBend([other(rest)]);
          if (!still) throw new Error('the test requires a rest');
          expect(toeExtension(other(rest + lift), still, 'right').angleDeg).toBeCloseTo(lift, 6);
        },
      ),
    );
  });

  test('points where the tip lies from the arch', () => {
    const { tip, arch } = footSpots(0);
    expect(toesPoint(arch, tip)).toBe('left');
    expect(toesPoint(tip, arch)).toBe('right');
  });

  test('the interval holds 95 of 100 angles of centres that are out by what they say', () => {
    const random = uniformFrom(4);
    const normal = (): number => Math.sqrt(-2 * Math.log(1 - random())) * Math.cos(2 * Math.PI * random());
    const off = (at: Spot, errorPx: number) => placed({ x: at.x + errorPx * normal(), y: at.y + errorPx * normal() }, errorPx);
    const noisy = (liftDeg: number) => {
      const { tip, knuckle, arch } = footSpots(liftDeg);
      return bendAt(off(arch, 0.3), off(knuckle, 0.15), off(tip, 0.2));
    };
    let inside = 0;
    const runs = 4000;
    for (let i = 0; i < runs; i++) {
      const rest = restBend([noisy(0)]);
      if (!rest) throw new Error('the test requires a rest');
      const { angleDeg, errorDeg } = toeExtension(noisy(25), rest, 'left');
      if (Math.abs(angleDeg - 25) <= errorDeg) inside++;
    }
    expect(inside / runs).toBeGreaterThan(0.94);
    expect(inside / runs).toBeLessThan(0.96);
  });

  test('a rest of many frames is known better than one of a single frame, but not without end', () => {
    const one = restBend([bend(0)]);
    const many = restBend(Array.from({ length: 1000 }, () => bend(0)));
    expect(many?.seDeg).toBeLessThan(one?.seDeg as number);
    expect(many?.seDeg).toBeGreaterThan((one?.seDeg as number) / 2);
    expect(restBend([])).toBeNull();
  });

  test('has no angle without its stickers, or with distances that cannot be', () => {
    const { tip, knuckle, arch } = footSpots(5);
    const all = { tip: seen(tip), knuckle: seen(knuckle), arch: seen(arch) };
    expect(toeBend({ stickers: all, troubles: [] })).toMatchObject({ ok: true, value: { toes: 'left' } });
    expect(toeBend({ stickers: { ...all, tip: null }, troubles: [{ kind: 'lost', name: 'tip' }] })).toMatchObject({
      ok: false,
      error: { kind: 'lost', name: 'tip' },
    });
    const stretched = { kind: 'implausible', between: ['tip', 'knuckle'], stretch: 1.6 } as const;
    expect(toeBend({ stickers: all, troubles: [stretched] })).toEqual({ ok: false, error: stretched });
    // Another toe's sticker is another matter.
    expect(toeBend({ stickers: all, troubles: [{ kind: 'lost', name: 'toe-2' }] }).ok).toBe(true);
  });
});

describe('the ankle by stickers', () => {
  test('is 0 with the foot square to the shin, and the forefoot up is positive, whichever way the toes point', () => {
    const ankle = { x: 100, y: 100 };
    const shin = { x: 100, y: 40 };
    const forefoot = (upDeg: number, way: 1 | -1): Spot => ({
      x: 100 + way * 50 * Math.cos((upDeg * Math.PI) / 180),
      y: 100 - 50 * Math.sin((upDeg * Math.PI) / 180),
    });
    for (const upDeg of [-40, 0, 15]) {
      const left = stickerAnkle(placed(shin), placed(ankle), placed(forefoot(upDeg, -1)), 'left');
      const right = stickerAnkle(placed(shin), placed(ankle), placed(forefoot(upDeg, 1)), 'right');
      expect(left.angleDeg).toBeCloseTo(upDeg, 6);
      expect(right.angleDeg).toBeCloseTo(upDeg, 6);
      expect(left.errorDeg).toBeCloseTo(right.errorDeg, 6);
    }
  });
});

test('angles go on without a jump', () => {
  expect(unwrappedAngle(deg(-179), deg(178))).toBe(181);
  expect(unwrappedAngle(deg(12), null)).toBe(12);
});
