import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { angleOfPoints, kneeOfPoints, POINTS_OF, type PointsView } from '../../src/measure/angle-of-points.ts';
import { facingOf } from '../../src/measure/leg-sample.ts';
import type { LegDrawing } from '../../src/measure/live-view.ts';
import { deg, px } from '../../src/units.ts';

const SIZE = { width: 640, height: 480 };

interface RaiseTruth {
  readonly frames: readonly {
    readonly jointsPx: Readonly<Record<string, readonly [number, number]>>;
    readonly legElevationDeg: number;
  }[];
}

const truthOf = (id: string): RaiseTruth =>
  JSON.parse(readFileSync(join(import.meta.dirname, '..', 'clips', `${id}.truth.json`), 'utf8')) as RaiseTruth;

/** The leg of a truth's frame, each point put to a whole pixel as an arrow key puts it. */
function placed(joints: RaiseTruth['frames'][number]['jointsPx'], side: 'L' | 'R'): LegDrawing {
  const at = (name: string) => {
    const [x, y] = joints[`${name}${side}`] ?? [Number.NaN, Number.NaN];
    return { x: px(Math.round(x)), y: px(Math.round(y)) };
  };
  return { hip: at('hip'), knee: at('knee'), ankle: at('ankle'), heel: at('ankle'), toe: at('toe') };
}

const view = (over: Partial<PointsView> = {}): PointsView => ({
  angle: 'leg-elevation',
  facing: 'left',
  size: SIZE,
  turnDeg: deg(0),
  ...over,
});

describe('the angle of points that a hand set', () => {
  test.each([
    ['slr-left-steady', 'L', 'left'],
    ['slr-left-kneebend', 'L', 'left'],
    ['slr-left-aside', 'L', 'left'],
    ['slr-right-turned', 'R', 'right'],
  ] as const)('on the true joints of %s lies within a degree of what the picture shows, in every frame', (id, side, facing) => {
    const { frames } = truthOf(id);
    expect(frames.length).toBeGreaterThan(200);
    const off = frames.map(({ jointsPx }) => {
      const [hip, ankle] = [jointsPx[`hip${side}`], jointsPx[`ankle${side}`]] as [readonly number[], readonly number[]];
      const across = (facing === 'left' ? 1 : -1) * (Number(hip[0]) - Number(ankle[0]));
      const shownDeg = (Math.atan2(Number(hip[1]) - Number(ankle[1]), across) * 180) / Math.PI;
      const leg = placed(jointsPx, side);
      expect(facingOf(leg, 'lying')).toBe(facing);
      return Math.abs(angleOfPoints(leg, 'corrected', view({ facing })).angleDeg - shownDeg);
    });
    expect(Math.max(...off)).toBeLessThan(1);
  });

  test('seen square from the side is that of the leg in space within two degrees', () => {
    for (const { jointsPx, legElevationDeg } of truthOf('slr-left-steady').frames) {
      const { angleDeg } = angleOfPoints(placed(jointsPx, 'L'), 'corrected', view());
      expect(Math.abs(angleDeg - legElevationDeg)).toBeLessThan(2);
    }
  });

  const leg = (lengthPx: number, raisedDeg: number): LegDrawing => {
    const rad = (raisedDeg * Math.PI) / 180;
    const at = (share: number) => ({
      x: px(320 - share * lengthPx * Math.cos(rad)),
      y: px(240 - share * lengthPx * Math.sin(rad)),
    });
    return { hip: at(0), knee: at(0.5), ankle: at(1), heel: at(1), toe: at(1.1) };
  };

  test('has an error of both ends over the length of the line, 3.2 px of 640 each on 200 px, and of a turn of 3.5 degrees', () => {
    const { errorDeg, angleDeg } = angleOfPoints(leg(200, 0), 'corrected', view());
    expect(angleDeg).toBeCloseTo(0);
    const endsDeg = (Math.SQRT2 * (3.2 / 200) * 180) / Math.PI;
    // A level leg seen from a little aside and above lies on a slope of 0.3 times the tangent of the turn.
    const slopeDeg = (Math.atan(0.3 * Math.tan((3.5 * Math.PI) / 180)) * 180) / Math.PI;
    expect(errorDeg).toBeCloseTo(1.96 * Math.hypot(endsDeg, slopeDeg), 1);
  });

  test('is known worse the shorter the leg is in the picture, the more the camera is turned and the less that is known', () => {
    const errorOf = (lengthPx: number, turnDeg: number | null) =>
      angleOfPoints(leg(lengthPx, 45), 'corrected', view({ turnDeg: turnDeg === null ? null : deg(turnDeg) })).errorDeg;
    expect(errorOf(100, 0)).toBeGreaterThan(1.4 * errorOf(200, 0));
    expect(errorOf(200, 15)).toBeGreaterThan(errorOf(200, 0));
    expect(errorOf(200, null)).toBeGreaterThan(errorOf(200, 0));
  });

  test('covers what a turned camera does to the angle, raised and at rest', () => {
    const { frames } = truthOf('slr-right-turned');
    for (const { jointsPx, legElevationDeg } of frames) {
      const { angleDeg, errorDeg } = angleOfPoints(
        placed(jointsPx, 'R'),
        'corrected',
        view({ facing: 'right', turnDeg: deg(12) }),
      );
      expect(Math.abs(angleDeg - legElevationDeg)).toBeLessThan(errorDeg);
    }
  });

  test('knows a leg better from placed points than from the model’s, and tells its knee', () => {
    const raised = leg(200, 45);
    expect(angleOfPoints(raised, 'corrected', view()).errorDeg).toBeLessThan(angleOfPoints(raised, 'landmarks', view()).errorDeg);
    expect(kneeOfPoints(raised, 'left')).toBeCloseTo(0);
  });

  test('only the named points of an angle move it or its error', () => {
    const names = ['hip', 'knee', 'ankle', 'heel', 'toe'] as const;
    const anywhere = fc.record({ x: fc.integer({ min: 0, max: 640 }), y: fc.integer({ min: 0, max: 480 }) });
    const angles = fc.constantFrom('knee-flexion', 'ankle-dorsiflexion', 'foot-elevation', 'leg-elevation');
    fc.assert(
      fc.property(angles, fc.constantFrom(...names), anywhere, (angle, name, { x, y }) => {
        const base = leg(200, 30);
        const before = angleOfPoints(base, 'corrected', view({ angle }));
        const after = angleOfPoints({ ...base, [name]: { x: px(x), y: px(y) } }, 'corrected', view({ angle }));
        if (!(POINTS_OF[angle] as readonly string[]).includes(name)) expect(after).toEqual(before);
      }),
    );
  });
});
