import fc from 'fast-check';
import { expect, test } from 'vitest';
import { type Facing, jointAngle } from '../../src/angles/joint-angle.ts';
import { exerciseOf, legAngleOf } from '../../src/exercises/catalogue.ts';
import { EXERCISE_IDS } from '../../src/exercises/exercise.ts';
import type { LegDrawing } from '../../src/measure/live-view.ts';
import { targetBand } from '../../src/screens/set/target-band.ts';
import { deg, px } from '../../src/units.ts';

/** A leg of a person whose feet are to the right, by its segments' directions, clockwise from x, deg. */
function legOf(thighDeg: number, shankDeg: number, footDeg: number, mirror: boolean): LegDrawing {
  const sx = mirror ? -1 : 1;
  const from = (at: { x: number; y: number }, direction: number, length: number) => ({
    x: px(at.x + sx * length * Math.cos((direction * Math.PI) / 180)),
    y: px(at.y + length * Math.sin((direction * Math.PI) / 180)),
  });
  const hip = { x: px(300), y: px(240) };
  const knee = from(hip, thighDeg, 100);
  const ankle = from(knee, shankDeg, 90);
  const heel = from(ankle, footDeg + 180, 12);
  return { hip, knee, ankle, heel, toe: from(ankle, footDeg, 40) };
}

const lineOf = (a: LegDrawing['hip'], b: LegDrawing['hip']) => ({
  directionDeg: deg((Math.atan2(b.y - a.y, b.x - a.x) * 180) / Math.PI),
  lengthPx: Math.hypot(b.x - a.x, b.y - a.y),
});
const angleOf = (id: (typeof EXERCISE_IDS)[number], leg: LegDrawing, facing: Facing) =>
  jointAngle(
    exerciseOf(id).angle,
    { thigh: lineOf(leg.hip, leg.knee), shank: lineOf(leg.knee, leg.ankle), foot: lineOf(leg.heel, leg.toe) },
    facing,
  );

test.each(EXERCISE_IDS.filter((id) => exerciseOf(id).seenBy.includes('pose')))(
  '%s: the moving end put into the band has just the angle aimed at, whichever way the feet point',
  (id) => {
    const { posture } = exerciseOf(id);
    const angle = legAngleOf(id);
    fc.assert(
      fc.property(fc.boolean(), fc.integer({ min: -25, max: 25 }), fc.integer({ min: -20, max: 20 }), (mirror, more, tilt) => {
        const lying = posture === 'lying';
        const leg = lying ? legOf(tilt - 20, tilt - 20, tilt - 105, mirror) : legOf(tilt, 80 + tilt, tilt, mirror);
        const facing = mirror ? 'left' : 'right';
        const nowDeg = angleOf(id, leg, facing);
        const toDeg = deg(nowDeg + more);
        const { centre, end: from, toRad } = targetBand(leg, { angle, posture }, { nowDeg, fromDeg: nowDeg, toDeg });
        const radius = Math.hypot(from.x - centre.x, from.y - centre.y);
        const end = { x: px(centre.x + radius * Math.cos(toRad)), y: px(centre.y + radius * Math.sin(toRad)) };
        const moved: LegDrawing =
          angle === 'ankle-dorsiflexion' || angle === 'foot-elevation'
            ? { ...leg, toe: end, heel: angle === 'foot-elevation' ? leg.heel : turnedHeel(leg, end) }
            : // The whole leg about the hip, or the shank about the knee.
              angle === 'leg-elevation'
              ? { ...leg, knee: { x: px((leg.hip.x + end.x) / 2), y: px((leg.hip.y + end.y) / 2) }, ankle: end }
              : { ...leg, ankle: end };
        expect(Math.abs(angleOf(id, moved, facing) - toDeg)).toBeLessThan(1e-6);
      }),
    );
  },
);

/** The heel of a foot that turned about its ankle with its toe. */
const turnedHeel = ({ ankle }: LegDrawing, toe: LegDrawing['hip']): LegDrawing['hip'] => ({
  x: px(ankle.x - 0.3 * (toe.x - ankle.x)),
  y: px(ankle.y - 0.3 * (toe.y - ankle.y)),
});

test('a band is reached from its first degree to its last, also where the angle falls', () => {
  const { posture } = exerciseOf('knee-straighten');
  const angle = legAngleOf('knee-straighten');
  const at = (nowDeg: number) =>
    targetBand(legOf(0, 60, -30, false), { angle, posture }, { nowDeg: deg(nowDeg), fromDeg: deg(40), toDeg: deg(30) }).reached;
  expect([41, 40, 35, 30, 29].map(at)).toEqual([false, true, true, true, false]);
});
