import { type Deg, deg, degOfRad, radOfDeg, wrapped } from '../units.ts';
import type { BodyPoints, OtherSide } from './leg-sample.ts';
import { lineBetween } from './line-between.ts';

/**
 * A person lying side-on covers the far shoulder and hip with the near ones; a camera towards the feet shows the far ones nearer to the head, and
 * the other way round. As shares of the line from shoulder to ankle: where the model sees the far ones of a person lying exactly side-on, and how
 * much further towards the feet for each degree of turn. Measured on rendered clips with camera turns of -10 to 12 degrees. Of 22 other views of two
 * bodies, -25 to 25 degrees, 19 came out within 5 degrees, the worst 10 off. The shares are half of what the joints' own places would give: the model guesses what it does not see.
 */
const SQUARE = { shoulder: 0.039, hip: 0.0085 } as const;
const PER_DEGREE = { shoulder: 0.0016, hip: 0.00125 } as const;
/** A camera stands above the person: sine of the angle by which it looks down. Chosen: 40 to 80 cm above a mat 2.4 m away are 0.16 to 0.32. */
const LOOKS_DOWN = 0.3;

/**
 * A leg held up by more than this against the trunk, deg: its ankle does not tell where the body lies, the other one's does. Chosen: leg raises are read at
 * rest, glides with the leg at 30 and more.
 */
const HELD_UP_DEG = 15;
/**
 * The hip's share beside a leg that is held up; the shoulders move with the arms that hold it and are left out. Measured on nine rendered glides, turned by -12
 * to 10 degrees: within 7 degrees, the worst 11 off.
 */
const HELD_HIP = 0.016;

/** Share of the body's line by which a point of the far side lies nearer to the feet than the near side's. */
function ahead(
  near: { readonly x: number; readonly y: number },
  far: { readonly x: number; readonly y: number },
  body: BodyPoints,
) {
  const dx = body.ankle.x - body.shoulder.x;
  const dy = body.ankle.y - body.shoulder.y;
  return ((far.x - near.x) * dx + (far.y - near.y) * dy) / (dx * dx + dy * dy || 1);
}

/** How far the camera is turned off the side view of a lying person, towards their feet positive, deg. From one frame's points. */
export function lyingTurnSeen(points: BodyPoints, other: OtherSide): number {
  const { shoulder, hip, ankle } = points;
  const raised = Math.abs(wrapped(lineBetween(hip, ankle).directionDeg - lineBetween(shoulder, hip).directionDeg));
  if (raised > HELD_UP_DEG) return (ahead(hip, other.hip, { ...points, ankle: other.ankle }) - HELD_HIP) / PER_DEGREE.hip;
  return (
    ((ahead(shoulder, other.shoulder, points) - SQUARE.shoulder) / PER_DEGREE.shoulder +
      (ahead(hip, other.hip, points) - SQUARE.hip) / PER_DEGREE.hip) /
    2
  );
}

/** The slope on which a turned camera shows a level leg, towards the feet up positive. */
export const slopeOfTurn = (turnDeg: Deg): Deg =>
  degOfRad(Math.atan(-LOOKS_DOWN * Math.tan(radOfDeg(deg(Math.max(-45, Math.min(45, turnDeg)))))));
