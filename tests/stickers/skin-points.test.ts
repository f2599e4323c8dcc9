import { describe, expect, test } from 'vitest';
import type { Grey } from '../../src/flow/grey.ts';
import type { ToeOrder } from '../../src/stickers/arrange.ts';
import { bendAt } from '../../src/stickers/line-angle.ts';
import type { Spot } from '../../src/stickers/rgba-picture.ts';
import { startSkinPoints, stepSkinPoints } from '../../src/stickers/skin-points.ts';
import { ms } from '../../src/units.ts';
import { texture } from '../flow/synthetic-picture.ts';
import { FOOT, footSpots, liftAt } from './moving-foot.ts';

const SIZE = { width: 240, height: 160 };
const FRAME_MS = 50;
const LIFT_FRAMES = 20;
const foot = { ...FOOT, arch: { x: 170, y: 80 }, archToKnuckle: 70, knuckleToTip: 40, lineDeg: 180 };
const surface = texture(11);

/** A textured foot: what lies beyond the knuckle turns about it as one piece. The knuckle's point sits on the foot's side of the crease. */
function drawn(liftDeg: number, seed: number): Grey {
  const { knuckle } = footSpots(0, foot);
  const crease = knuckle.x - 14;
  const turn = (liftDeg * Math.PI) / 180;
  const data = new Uint8Array(SIZE.width * SIZE.height);
  for (let y = 0; y < SIZE.height; y++) {
    for (let x = 0; x < SIZE.width; x++) {
      // Back to where this pixel's skin lies at rest; clockwise on the screen lifts what points to the left.
      const dx = x - knuckle.x;
      const dy = y - knuckle.y;
      const backX = knuckle.x + Math.cos(turn) * dx + Math.sin(turn) * dy;
      const backY = knuckle.y - Math.sin(turn) * dx + Math.cos(turn) * dy;
      const grey = backX < crease && x < crease ? surface(backX, backY) : surface(x, y);
      data[y * SIZE.width + x] = Math.max(0, Math.min(255, grey + ((x * 37 + y * 91 + seed * 53) % 7) - 3));
    }
  }
  return { ...SIZE, data };
}

const bend = ({ tip, knuckle, arch }: ToeOrder<Spot>): number => {
  const exact = (at: Spot) => ({ at, errorPx: 0 });
  return bendAt(exact(arch), exact(knuckle), exact(tip)).bendDeg;
};

describe('three points on bare skin', () => {
  test('follow four lifts within 1.5 degrees, and are back at rest after each', () => {
    const rest = footSpots(0, foot);
    const began = startSkinPoints(drawn(0, 0), rest, ms(0));
    if (!began.ok) throw new Error(`the test requires points, got ${JSON.stringify(began.error)}`);
    let state = began.value;
    const restDeg = bend(rest);
    let sum = 0;
    let worstAtRest = 0;
    const frames = 4 * LIFT_FRAMES;
    for (let i = 1; i <= frames; i++) {
      const lift = liftAt(i * FRAME_MS, 24, LIFT_FRAMES * FRAME_MS);
      const step = stepSkinPoints(state, drawn(lift, i), ms(i * FRAME_MS));
      state = step.state;
      const { tip, knuckle, arch } = step.spots;
      if (!tip || !knuckle || !arch) throw new Error(`the test requires all points in frame ${i}`);
      const off = Math.abs(bend({ tip: tip.at, knuckle: knuckle.at, arch: arch.at }) - restDeg - lift);
      sum += off;
      if (i % LIFT_FRAMES === 0) worstAtRest = Math.max(worstAtRest, off);
    }
    expect(sum / frames).toBeLessThan(1.5);
    expect(worstAtRest).toBeLessThan(0.3);
  });

  test('a covered point is null, and found again where it was', () => {
    const rest = footSpots(0, foot);
    const began = startSkinPoints(drawn(0, 0), rest, ms(0));
    if (!began.ok) throw new Error(`the test requires points, got ${JSON.stringify(began.error)}`);
    const open = drawn(0, 1);
    const data = open.data.slice();
    for (let y = 0; y < SIZE.height; y++) data.fill(120, y * SIZE.width, y * SIZE.width + 95);
    const covered = stepSkinPoints(began.value, { ...open, data }, ms(FRAME_MS));
    expect(covered.spots.tip).toBeNull();
    expect(covered.spots.arch).not.toBeNull();
    const again = stepSkinPoints(covered.state, drawn(0, 2), ms(2 * FRAME_MS));
    expect(
      Math.hypot((again.spots.tip?.at.x as number) - rest.tip.x, (again.spots.tip?.at.y as number) - rest.tip.y),
    ).toBeLessThan(0.3);
  });

  test('skin without any mark, and places beside the picture, are refused by name', () => {
    const plain: Grey = { ...SIZE, data: new Uint8Array(SIZE.width * SIZE.height).fill(150) };
    expect(startSkinPoints(plain, footSpots(0, foot), ms(0))).toEqual({ ok: false, error: { kind: 'flat-skin', name: 'tip' } });
    const outside = { ...footSpots(0, foot), arch: { x: 400, y: 80 } };
    expect(startSkinPoints(drawn(0, 0), outside, ms(0))).toEqual({ ok: false, error: { kind: 'outside', name: 'arch' } });
  });
});
