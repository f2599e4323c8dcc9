import { type Deg, degOfRad, radOfDeg } from '../units.ts';

/**
 * The direction a line in the side plane would have seen square on, from its direction in the picture of a turned camera. Such a camera shows what lies
 * across the picture shorter by the cosine of its turn, and heights as they are. That it also looks up or down is not taken in.
 * @param directionDeg in the picture, clockwise from its x axis
 * @param turnDeg how far the camera is turned off the side view, under 90
 */
export function squaredDirection(directionDeg: Deg, turnDeg: Deg): Deg {
  const direction = radOfDeg(directionDeg);
  const seen = Math.atan2(Math.sin(direction), Math.cos(direction) / Math.cos(radOfDeg(turnDeg)));
  // The same whole turns as before: directions run on past 180.
  return degOfRad(direction + Math.atan2(Math.sin(seen - direction), Math.cos(seen - direction)));
}
