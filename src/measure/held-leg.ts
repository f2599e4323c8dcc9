import { type Facing, kneeFlexion, type LegLines, legElevation } from '../angles/joint-angle.ts';
import { turnedElevation } from '../angles/turned-elevation.ts';
import { median } from '../signal/median.ts';
import { type Deg, deg, type Ms } from '../units.ts';
import { firstAtLeast } from './first-at-least.ts';
import type { LegSample } from './leg-sample.ts';
import { lineBetween } from './line-between.ts';
import { slopeOfTurn } from './lying-turn.ts';

/** The other leg tells what is level only when it lies: this near to the picture's horizontal, deg, since cameras tilt; and straight. Chosen. */
const LEVEL_OFFSET_DEG = 15;
const STRAIGHT_DEG = 25;
/** The points jitter: an elevation is the median over this time, before and after it together, ms. Chosen. */
export const AROUND_MS = 500;

/** How high a leg is held in one frame's picture, and what of that the camera's tilt is; null level: the other leg does not lie flat. */
export interface ElevationSeen {
  readonly inPictureDeg: Deg;
  readonly levelDeg: Deg | null;
}

const lineOf = ({ hip, knee, ankle }: Pick<NonNullable<LegSample['other']>, 'hip' | 'knee' | 'ankle'>) => ({
  thigh: lineBetween(hip, knee),
  shank: lineBetween(knee, ankle),
});

/** From one frame's points; null without them. */
export function elevationSeen({ points, other }: Pick<LegSample, 'points' | 'other'>, facing: Facing): ElevationSeen | null {
  if (!points) return null;
  return { inPictureDeg: legElevation(lineOf(points), facing), levelDeg: other && levelIn(lineOf(other), facing) };
}

function levelIn(lying: Pick<LegLines, 'thigh' | 'shank'>, facing: Facing): Deg | null {
  const level = legElevation(lying, facing);
  const flat = Math.abs(level) <= LEVEL_OFFSET_DEG && Math.abs(kneeFlexion(lying, facing)) <= STRAIGHT_DEG;
  return flat ? level : null;
}

/** What the other leg says is level in most frames; null when it does not lie flat in most of them. */
export function usualLevel(seen: readonly (ElevationSeen | null)[]): Deg | null {
  const all = seen.filter((each) => each !== null);
  const levels = all.flatMap(({ levelDeg }) => (levelDeg === null ? [] : [levelDeg]));
  const level = 2 * levels.length > all.length ? median(levels) : null;
  return level === null ? null : deg(level);
}

/**
 * The leg's elevation: from the picture's, the level and what a turned camera adds to it taken off.
 * @param levelDeg null: the picture's horizontal is level
 */
export const elevationOf = (inPictureDeg: Deg, levelDeg: Deg | null, cameraTurnDeg: Deg | null): Deg =>
  turnedElevation(deg(inPictureDeg - (levelDeg ?? 0)), slopeOfTurn(cameraTurnDeg ?? deg(0)));

/** The leg's elevation through a finished set, one a frame; null where it was not seen. */
export function elevationSeries(samples: readonly LegSample[], facing: Facing, cameraTurnDeg: Deg | null) {
  const seen = samples.map((sample) => elevationSeen(sample, facing));
  const levelDeg = usualLevel(seen);
  const around = (tMs: Ms): readonly Deg[] => {
    const near: Deg[] = [];
    for (let i = firstAtLeast(samples, tMs - AROUND_MS / 2, (s) => s.tMs); i < samples.length; i++) {
      if ((samples[i] as LegSample).tMs > tMs + AROUND_MS / 2) break;
      const each = seen[i];
      if (each) near.push(each.inPictureDeg);
    }
    return near;
  };
  const elevationDeg = samples.map(({ tMs }, i) => {
    const middle = seen[i] ? median(around(tMs)) : null;
    return middle === null ? null : elevationOf(deg(middle), levelDeg, cameraTurnDeg);
  });
  return { elevationDeg, levelled: levelDeg !== null };
}
