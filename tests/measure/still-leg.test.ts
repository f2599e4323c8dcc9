import { describe, expect, test } from 'vitest';
import { legRaise } from '../../src/exercises/leg-raise.ts';
import { angleOfPoints } from '../../src/measure/angle-of-points.ts';
import { legToPlace, stillLeg } from '../../src/measure/still-leg.ts';
import { ms } from '../../src/units.ts';
import { type BodyPose, landmarksOf, lying, SIZE } from './pose-builder.ts';

const seen = (body: BodyPose | null) => ({
  tMs: ms(0),
  landmarks: body && landmarksOf(body),
  motion: null,
  camera: null,
  brightness: 120,
});

describe('the leg in a single picture', () => {
  test('is found with the way it points, and its angle is its elevation', () => {
    for (const thighDeg of [0, 40, 75]) {
      const { leg, facing, turnDeg, advice } = stillLeg(seen(lying({ thighDeg })), legRaise, 'left', SIZE);
      expect(advice).toEqual([]);
      expect(facing).toBe('left');
      if (!leg || !facing) throw new Error('expected a leg');
      const { angleDeg } = angleOfPoints(leg, 'landmarks', { angle: 'leg-elevation', facing, size: SIZE, turnDeg });
      expect(Math.abs(angleDeg - thighDeg)).toBeLessThan(2);
    }
  });

  test('points the same way when it is raised past the upright', () => {
    const { leg, facing } = stillLeg(seen(lying({ thighDeg: 100, thighPx: 90, shiftY: 120 })), legRaise, 'left', SIZE);
    expect(facing).toBe('left');
    expect(leg && leg.ankle.x > leg.hip.x).toBe(true);
  });

  test('is none where nobody is seen, or the other leg is the nearer one, and something is said of the view', () => {
    expect(stillLeg(seen(null), legRaise, 'left', SIZE)).toEqual({ leg: null, facing: null, turnDeg: null, advice: ['nobody'] });
    const far = stillLeg(seen(lying()), legRaise, 'right', SIZE);
    expect(far.leg).toBeNull();
    expect(far.advice).not.toEqual([]);
  });

  test('to be placed by hand lies inside the picture', () => {
    for (const posture of ['lying', 'upright', 'standing'] as const)
      for (const { x, y } of Object.values(legToPlace(posture, SIZE))) {
        expect(x).toBeGreaterThan(0);
        expect(x).toBeLessThan(SIZE.width);
        expect(y).toBeGreaterThan(0);
        expect(y).toBeLessThan(SIZE.height);
      }
  });
});
