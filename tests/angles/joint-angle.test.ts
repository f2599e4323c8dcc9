import fc from 'fast-check';
import { expect, test } from 'vitest';
import {
  ankleDorsiflexion,
  type Facing,
  type JointAngle,
  jointAngle,
  kneeFlexion,
  type LegLines,
  legElevation,
} from '../../src/angles/joint-angle.ts';
import { deg } from '../../src/units.ts';
import { legOf, line, mirroredLeg, otherFacing } from './leg-lines-builder.ts';

const ANGLES: readonly JointAngle[] = ['ankle-dorsiflexion', 'leg-elevation', 'knee-flexion'];
const direction = fc.double({ min: -180, max: 180, noNaN: true });
const facing = fc.constantFrom<Facing>('left', 'right');
const leg = fc.record({ thigh: direction, shank: direction, foot: direction }).map((d) => legOf(d.thigh, d.shank, d.foot));
/** Angles that differ by a whole turn are the same. */
const apart = (a: number, b: number) => Math.abs(((((a - b + 180) % 360) + 360) % 360) - 180);

// Zero and sign as on a goniometer: the neutral-zero method of Norkin and White, Measurement of Joint Motion (from memory). Ankle 0 with the foot square to the
// shank, dorsiflexion positive; knee 0 when straight, flexion positive; hip flexion with a straight knee from the horizontal of a person lying on the back.
test.each([
  { what: 'foot square to a hanging shank, toes right', foot: 0, shank: 90, facing: 'right', is: 0 },
  { what: 'the same, toes left', foot: 180, shank: 90, facing: 'left', is: 0 },
  { what: 'toes right, lifted by 15', foot: -15, shank: 90, facing: 'right', is: 15 },
  { what: 'toes left, lifted by 15', foot: 195, shank: 90, facing: 'left', is: 15 },
  { what: 'toes left and pointing down by 30', foot: 150, shank: 90, facing: 'left', is: -30 },
  { what: 'lying with the feet to the right, toes up and square', foot: -90, shank: 0, facing: 'right', is: 0 },
  { what: 'lying with the feet to the left, toes pulled back by 10', foot: -80, shank: 180, facing: 'left', is: 10 },
] as const)('dorsiflexion: $what is $is', ({ foot, shank, facing: towards, is }) => {
  expect(ankleDorsiflexion({ foot: line(foot), shank: line(shank) }, towards)).toBeCloseTo(is, 10);
});

test.each([
  { what: 'a straight lying leg, feet left', thigh: 180, shank: 180, facing: 'left', is: 0 },
  { what: 'sitting to the right', thigh: 0, shank: 90, facing: 'right', is: 90 },
  { what: 'sitting to the left', thigh: 180, shank: 90, facing: 'left', is: 90 },
  { what: 'a raised leg with a bent knee, feet left', thigh: -135, shank: 180, facing: 'left', is: 45 },
  { what: 'a knee bent backwards by 5, feet right', thigh: 0, shank: -5, facing: 'right', is: -5 },
] as const)('knee flexion: $what is $is', ({ thigh, shank, facing: towards, is }) => {
  expect(kneeFlexion({ thigh: line(thigh), shank: line(shank) }, towards)).toBeCloseTo(is, 10);
});

test.each([
  { what: 'a straight leg raised by 40, feet left', thigh: [-140, 100], shank: [-140, 80], facing: 'left', is: 40 },
  { what: 'a straight leg raised by 40, feet right', thigh: [-40, 100], shank: [-40, 80], facing: 'right', is: 40 },
  { what: 'a leg past the vertical', thigh: [-100, 100], shank: [-100, 80], facing: 'right', is: 100 },
  { what: 'a leg below the horizontal', thigh: [5, 100], shank: [5, 80], facing: 'right', is: -5 },
  { what: 'equal segments at 60 and 20: their middle', thigh: [-60, 100], shank: [-20, 100], facing: 'right', is: 40 },
  {
    what: 'a right angle at the knee, thigh up: the hypotenuse',
    thigh: [-90, 30],
    shank: [0, 40],
    facing: 'right',
    is: 36.869897646,
  },
] as const)('leg elevation: $what is $is', ({ thigh, shank, facing: towards, is }) => {
  const lines = { thigh: line(thigh[0], thigh[1]), shank: line(shank[0], shank[1]) };
  expect(legElevation(lines, towards)).toBeCloseTo(is, 8);
});

test('a mirrored picture shows the other facing and the same angles', () => {
  fc.assert(
    fc.property(leg, facing, fc.constantFrom(...ANGLES), (lines, towards, angle) => {
      const seen = jointAngle(angle, lines, towards);
      expect(apart(jointAngle(angle, mirroredLeg(lines), otherFacing(towards)), seen)).toBeLessThan(1e-9);
    }),
  );
});

test('the picture\u2019s scale changes no angle', () => {
  const scaled = ({ thigh, shank, foot }: LegLines, by: number): LegLines => ({
    thigh: { ...thigh, lengthPx: thigh.lengthPx * by },
    shank: { ...shank, lengthPx: shank.lengthPx * by },
    foot: { ...foot, lengthPx: foot.lengthPx * by },
  });
  fc.assert(
    fc.property(
      leg,
      facing,
      fc.constantFrom(...ANGLES),
      fc.double({ min: 0.05, max: 20, noNaN: true }),
      (lines, towards, angle, by) => {
        // A leg folded back onto the hip has no direction.
        fc.pre(angle !== 'leg-elevation' || apart(lines.thigh.directionDeg, lines.shank.directionDeg) < 179);
        expect(apart(jointAngle(angle, scaled(lines, by), towards), jointAngle(angle, lines, towards))).toBeLessThan(1e-6);
      },
    ),
  );
});

test('a tilted camera changes neither ankle nor knee, and the leg\u2019s elevation by the tilt', () => {
  const tilted = ({ thigh, shank, foot }: LegLines, by: number): LegLines => ({
    thigh: { ...thigh, directionDeg: deg(thigh.directionDeg + by) },
    shank: { ...shank, directionDeg: deg(shank.directionDeg + by) },
    foot: { ...foot, directionDeg: deg(foot.directionDeg + by) },
  });
  fc.assert(
    fc.property(leg, facing, fc.double({ min: -60, max: 60, noNaN: true }), (lines, towards, by) => {
      fc.pre(apart(lines.thigh.directionDeg, lines.shank.directionDeg) < 179);
      const change = (angle: JointAngle) => jointAngle(angle, tilted(lines, by), towards) - jointAngle(angle, lines, towards);
      expect(apart(change('ankle-dorsiflexion'), 0)).toBeLessThan(1e-9);
      expect(apart(change('knee-flexion'), 0)).toBeLessThan(1e-9);
      expect(apart(change('leg-elevation'), towards === 'left' ? by : -by)).toBeLessThan(1e-6);
    }),
  );
});
