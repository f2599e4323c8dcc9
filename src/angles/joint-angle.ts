import { type Deg, deg, degOfRad, radOfDeg, wrapped } from '../units.ts';

/** The angles of a leg's own segments. */
export type LegAngle = 'ankle-dorsiflexion' | 'leg-elevation' | 'knee-flexion' | 'foot-elevation';

/** The angles that are measured. All are projections onto the picture's plane, seen from the side. */
export type JointAngle = LegAngle | 'great-toe-extension';

export const isLegAngle = (angle: JointAngle): angle is LegAngle => angle !== 'great-toe-extension';

/** A segment in the picture: its direction (from the hip outwards, the foot from heel to toe; clockwise from the picture's x axis) and its length. */
export interface SegmentLine {
  readonly directionDeg: Deg;
  readonly lengthPx: number;
}

/** Which way the toes, or the feet of a lying person, point in the picture. */
export type Facing = 'left' | 'right';

export interface LegLines {
  readonly thigh: SegmentLine;
  readonly shank: SegmentLine;
  readonly foot: SegmentLine;
}

/** Turning clockwise raises what points to the left and lowers what points to the right. */
const upward = (facing: Facing): 1 | -1 => (facing === 'left' ? 1 : -1);

/**
 * Ankle dorsiflexion: 0 with the foot square to the shank, up positive, deg. The foot's line is heel to forefoot, the shank's knee to ankle.
 * Follows the clinical zero; not an ISB joint coordinate (Wu et al. 2002, J Biomech 35:543), but its projection.
 */
export function ankleDorsiflexion({ foot, shank }: Pick<LegLines, 'foot' | 'shank'>, facing: Facing): Deg {
  // With the shank pointing down (90) and the foot to the left (180) or right (0), square is a difference of 90 either way.
  return deg(wrapped(upward(facing) * (foot.directionDeg - shank.directionDeg) - 90));
}

/** Knee flexion: 0 when thigh and shank are in line, bent positive, deg. */
export function kneeFlexion({ thigh, shank }: Pick<LegLines, 'thigh' | 'shank'>, facing: Facing): Deg {
  return deg(wrapped(-upward(facing) * (shank.directionDeg - thigh.directionDeg)));
}

/** Leg elevation: the line from hip to ankle against the picture's horizontal, towards the feet, up positive, deg. */
export function legElevation({ thigh, shank }: Pick<LegLines, 'thigh' | 'shank'>, facing: Facing): Deg {
  const along = ({ directionDeg, lengthPx }: SegmentLine, part: (rad: number) => number) =>
    lengthPx * part(radOfDeg(directionDeg));
  const x = along(thigh, Math.cos) + along(shank, Math.cos);
  const y = along(thigh, Math.sin) + along(shank, Math.sin);
  return degOfRad(Math.atan2(-y, facing === 'left' ? -x : x));
}

/** Foot elevation: the line from heel to forefoot against the picture's horizontal, towards the toes, forefoot up positive, deg. */
export const footElevation = ({ foot }: Pick<LegLines, 'foot'>, facing: Facing): Deg =>
  facing === 'left' ? deg(wrapped(foot.directionDeg - 180)) : deg(wrapped(-foot.directionDeg));

/** The angle called `angle` of a leg. @throws Error for the toe's, which no leg has */
export function jointAngle(angle: JointAngle, leg: LegLines, facing: Facing): Deg {
  switch (angle) {
    case 'ankle-dorsiflexion':
      return ankleDorsiflexion(leg, facing);
    case 'knee-flexion':
      return kneeFlexion(leg, facing);
    case 'foot-elevation':
      return footElevation(leg, facing);
    case 'leg-elevation':
      return legElevation(leg, facing);
    case 'great-toe-extension':
      throw new Error('jointAngle requires an angle of the leg, got great-toe-extension');
    default:
      return angle satisfies never;
  }
}
