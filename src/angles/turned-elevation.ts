import { type Deg, degOfRad, radOfDeg } from '../units.ts';

/**
 * How far a leg was raised from level, from how far it turned in a picture taken by a turned camera that looks down.
 * Such a camera shows what lies level on a slope: the end that is nearer to it lower in the picture. What stands upright stays upright, so that
 * the picture is sheared, tan(seen) = tan(true) + tan(slope), and the slope itself is what the leg shows at rest.
 * Only the slope that the turn makes goes in here: a rolled camera turns the picture as a whole and changes no difference of directions.
 * @param turnedDeg turn in the picture since the leg lay level, up positive
 * @param slopeDeg direction of the level leg in the picture, upright camera; up towards the feet positive
 */
export function turnedElevation(turnedDeg: Deg, slopeDeg: Deg): Deg {
  const turned = radOfDeg(turnedDeg);
  const slope = radOfDeg(slopeDeg);
  // atan(tan(slope + turned) - tan(slope)), written so that it goes on through the vertical.
  return degOfRad(Math.atan2(Math.sin(turned) / Math.cos(slope), Math.cos(turned + slope)));
}
