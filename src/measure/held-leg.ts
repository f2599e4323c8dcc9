import { type Facing, kneeFlexion, type LegLines, legElevation } from '../angles/joint-angle.ts';
import { median } from '../signal/median.ts';
import { type Deg, deg, wrapped } from '../units.ts';
import type { AngleInFrame } from './angle-series.ts';
import type { LegSample } from './leg-sample.ts';
import { lineBetween } from './line-between.ts';
import { OTHER_LEG_DEG } from './other-legs-points.ts';

/** The other leg tells what is level only when it lies: this near to the picture's horizontal, deg, since cameras tilt; and straight. Chosen. */
const LEVEL_OFFSET_DEG = 15;
const STRAIGHT_DEG = 25;
/**
 * So much of the other leg's slope is taken for the camera's tilt. Measured on 12 rendered views without tilt: that slope is up to 5 degrees off level, by a turned camera and by where the
 * model sees the far hip; taken whole it put the elevation 3.4 degrees off (rms), by half 2.3. Cameras tilt by about as much as it errs, so that half is the best guess.
 */
const LEVEL_SHARE = 0.5;
const lineOf = ({ hip, knee, ankle }: Pick<NonNullable<LegSample['other']>, 'hip' | 'knee' | 'ankle'>) => ({
  thigh: lineBetween(hip, knee),
  shank: lineBetween(knee, ankle),
});

/** What is level in the picture, as the other leg lies; null when it does not lie flat. */
export const levelSeen = ({ other }: Pick<LegSample, 'other'>, facing: Facing): Deg | null =>
  other && levelIn(lineOf(other), facing);

function levelIn(lying: Pick<LegLines, 'thigh' | 'shank'>, facing: Facing): Deg | null {
  const level = legElevation(lying, facing);
  const flat = Math.abs(level) <= LEVEL_OFFSET_DEG && Math.abs(kneeFlexion(lying, facing)) <= STRAIGHT_DEG;
  return flat ? level : null;
}

/** What is taken for level in the picture, by how the other leg lies; null when it is seen to lie flat in fewer than half of the frames. @param levels one a frame with a pose */
export function usualLevel(levels: readonly (Deg | null)[]): Deg | null {
  const flat = levels.filter((level) => level !== null);
  const level = 2 * flat.length > levels.length ? median(flat) : null;
  return level === null ? null : deg(LEVEL_SHARE * level);
}

/** Up from the picture's horizontal, towards the feet. */
const elevationOfLine = (directionDeg: Deg, facing: Facing): number =>
  wrapped(facing === 'left' ? directionDeg - 180 : -directionDeg);

/**
 * How much higher hip to ankle lies in the picture than the shank does, which the points tell; null where they are not this leg's.
 * @param shankDeg direction of the shank, by all that is known
 */
export function aboveShank({ points }: Pick<LegSample, 'points'>, shankDeg: Deg, facing: Facing): Deg | null {
  if (!points) return null;
  const { thigh, shank } = lineOf(points);
  if (Math.abs(wrapped(shank.directionDeg - shankDeg)) > OTHER_LEG_DEG) return null;
  return deg(legElevation({ thigh, shank }, facing) - elevationOfLine(shankDeg, facing));
}

/** The leg's elevation in the picture: the shank's, and what the whole leg usually is above it. */
export const elevationInPicture = (shankDeg: Deg, aboveShankDeg: Deg, facing: Facing): Deg =>
  deg(elevationOfLine(shankDeg, facing) + aboveShankDeg);

/**
 * The leg's elevation through a finished set, one a frame; null where it was not seen. The shank's motion tells how it changes, hip and ankle where they are
 * this leg's how high it is. What a turned camera does to it shows in the other leg as well and goes off with the level, but for a degree or two.
 * @param frames one a sample
 */
export function elevationSeries(
  samples: readonly LegSample[],
  frames: readonly (AngleInFrame | null)[],
  facing: Facing,
): { readonly elevationDeg: readonly (Deg | null)[]; readonly levelled: boolean } {
  const levelDeg = usualLevel(samples.filter(({ other }) => other !== null).map((sample) => levelSeen(sample, facing)));
  const shanks = frames.map((frame) => frame?.leg.shank.directionDeg ?? null);
  const above = median(
    samples.flatMap((sample, i) => {
      const shank = shanks[i] ?? null;
      return (shank === null ? null : aboveShank(sample, shank, facing)) ?? [];
    }),
  );
  const elevationDeg = shanks.map((shank) =>
    shank === null || above === null ? null : deg(elevationInPicture(shank, deg(above), facing) - (levelDeg ?? 0)),
  );
  return { elevationDeg, levelled: levelDeg !== null };
}
