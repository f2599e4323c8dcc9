import { expect, test } from 'vitest';
import { ankleDorsiflexion, legElevation, type SegmentLine } from '../../src/angles/joint-angle.ts';
import { deg, degOfRad, radOfDeg } from '../../src/units.ts';

/**
 * What a camera far away (an orthographic one) that stands off the side view by `turnDeg` sees of a segment in the leg's plane: its extent along
 * the picture's x shrinks by the cosine. The expected figures are worked out from this formula, not published ones.
 */
function seen(directionDeg: number, lengthPx: number, turnDeg: number): SegmentLine {
  const x = lengthPx * Math.cos(radOfDeg(deg(directionDeg))) * Math.cos(radOfDeg(deg(turnDeg)));
  const y = lengthPx * Math.sin(radOfDeg(deg(directionDeg)));
  return { directionDeg: degOfRad(Math.atan2(y, x)), lengthPx: Math.hypot(x, y) };
}

const TURNS = [5, 10, 15, 20, 30, 45] as const;

test.each([
  { raised: 20, over: [0.07, 0.28, 0.65, 1.17, 2.8, 7.24] },
  { raised: 30, over: [0.09, 0.38, 0.87, 1.57, 3.69, 9.23] },
  { raised: 45, over: [0.11, 0.44, 0.99, 1.78, 4.11, 9.74] },
  { raised: 60, over: [0.09, 0.38, 0.85, 1.52, 3.43, 7.79] },
  { raised: 70, over: [0.07, 0.28, 0.63, 1.12, 2.5, 5.57] },
])('a turned camera shows a leg raised by $raised too high', ({ raised, over }) => {
  const measured = TURNS.map(
    (turn) => legElevation({ thigh: seen(-raised, 100, turn), shank: seen(-raised, 90, turn) }, 'right') - raised,
  );
  measured.forEach((m, i) => {
    expect(Math.abs(m - (over[i] as number))).toBeLessThanOrEqual(0.0051);
  });
});

test.each([
  { turn: 10, worst: 0.7 },
  { turn: 20, worst: 2.9 },
  { turn: 30, worst: 6.6 },
  { turn: 45, worst: 15.5 },
])(
  'a camera turned by $turn makes at most $worst degrees of error at an ankle with the shank within 20 degrees of upright',
  ({ turn, worst }) => {
    let most = 0;
    for (let tilt = -20; tilt <= 20; tilt++) {
      for (let dorsiflexion = -20; dorsiflexion <= 20; dorsiflexion++) {
        const lines = { shank: seen(90 + tilt, 100, turn), foot: seen(tilt - dorsiflexion, 60, turn) };
        most = Math.max(most, Math.abs(ankleDorsiflexion(lines, 'right') - dorsiflexion));
      }
    }
    expect(Math.abs(most - worst)).toBeLessThanOrEqual(0.1);
  },
);

test('a turned camera is harmless to a foot square to an upright shank', () => {
  for (const turn of TURNS) {
    expect(ankleDorsiflexion({ shank: seen(90, 100, turn), foot: seen(0, 60, turn) }, 'right')).toBeCloseTo(0, 10);
  }
});
