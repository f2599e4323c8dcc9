import type { Posture } from '../pose/head-up.ts';
import { deg, radOfDeg } from '../units.ts';
import type { BodyPoints } from './leg-sample.ts';
import { lineBetween } from './line-between.ts';

/** How far the trunk of a lying person, or the thigh of a sitting one, may be from the picture's horizontal. Chosen: generous, since cameras tilt. */
const LEVEL_DEG = 45;
/**
 * A sitting person's trunk rises from the hip by at least this above the picture's horizontal. Chosen between what the clips show, 71 and more sitting, 12 and
 * less lying, and low enough for a reclined chair.
 */
const RAISED_DEG = 30;

const fromHorizontal = (directionDeg: number): number => {
  const d = Math.abs(directionDeg) % 180;
  return Math.min(d, 180 - d);
};

/** Whether the shoulder is so far above the hip in the picture that the trunk is raised; y points down. */
const trunkRaised = ({ shoulder, hip }: BodyPoints): boolean =>
  hip.y - shoulder.y > Math.sin(radOfDeg(deg(RAISED_DEG))) * lineBetween(hip, shoulder).lengthPx;

/** How far thigh and shank of a standing person may be from plumb. Chosen: a soft knee, a camera that tilts. */
const PLUMB_DEG = 30;

/**
 * Whether the body is placed as the exercise needs it: lying with the trunk level, sitting with the thigh level and the trunk raised, or standing with the
 * trunk raised and the leg plumb. Who walks or sits down is none of these for long, and a lying person does not sit, though the thigh is level.
 */
export function inPosture(points: BodyPoints, posture: Posture): boolean {
  const thigh = fromHorizontal(lineBetween(points.hip, points.knee).directionDeg);
  const shank = fromHorizontal(lineBetween(points.knee, points.ankle).directionDeg);
  switch (posture) {
    case 'lying':
      return fromHorizontal(lineBetween(points.shoulder, points.hip).directionDeg) <= LEVEL_DEG;
    case 'upright':
      return thigh <= LEVEL_DEG && trunkRaised(points);
    case 'standing':
      return trunkRaised(points) && Math.min(thigh, shank) >= 90 - PLUMB_DEG && points.ankle.y > points.hip.y;
    default:
      return posture satisfies never;
  }
}
