import { middleOf, raisedBy } from '../pose/raised-by.ts';
import { type DirectionClue, fuseDirections } from '../signal/fused-direction.ts';
import { quantile } from '../signal/median.ts';
import { type Deg, deg, wrapped } from '../units.ts';
import type { LegSample } from './leg-sample.ts';

/** Further than this from where the picture's motion has the shank of a held leg, the points are the other leg's. Chosen: a shank's own points scatter by up to 13 degrees with the leg held high, and the other leg lies 30 and more away. */
export const OTHER_LEG_DEG = 15;
/** Of a held leg a turn in the picture is believed however far the points are from it. */
export const ALWAYS_CREDIBLE = Number.POSITIVE_INFINITY;

/** The other leg is the raised one when its ankle is higher by this much, deg. Chosen: a resting one lies 30 and more below. */
const OTHER_UP_DEG = 15;
/** And in more than this share of the frames: nothing is measured. Chosen. */
const OTHER_UP_SHARE = 0.5;
/** Points nearer to the other leg than this share of how far apart both usually are lie between the two. Chosen. */
const OWN_SHARE = 0.6;
/** How far apart the legs of a set are: this quantile of what was seen. Chosen. */
const APART_QUANTILE = 0.9;

/** How much higher the leg's ankle is than the other leg's, deg; null where both were not seen. */
export function aheadOfOther({ points, other }: Pick<LegSample, 'points' | 'other'>): Deg | null {
  if (!points || !other) return null;
  const hips = middleOf(points.hip, other.hip);
  return deg(raisedBy(hips, points.ankle) - raisedBy(hips, other.ankle));
}

/** Whether the other leg is the one that is held up. */
export const isOtherUp = (sample: Pick<LegSample, 'points' | 'other'>): boolean => (aheadOfOther(sample) ?? 0) <= -OTHER_UP_DEG;

/** Whether the leg that was held up through a set is not the one asked for. */
export function otherLegUp(samples: readonly LegSample[]): boolean {
  const both = samples.filter(({ points, other }) => points && other);
  return both.filter(isOtherUp).length > OTHER_UP_SHARE * both.length;
}

/** In which frames the points lie between the two legs: the model goes from one to the other, and smooths its way. */
export function betweenLegs(samples: readonly LegSample[]): readonly boolean[] {
  const ahead = samples.map(aheadOfOther);
  const usual = quantile(
    ahead.filter((each) => each !== null),
    APART_QUANTILE,
  );
  if (usual === null || usual < OTHER_UP_DEG) return samples.map(() => false);
  return ahead.map((each) => each !== null && each < OWN_SHARE * usual);
}

/**
 * In which frames the points of a leg that is held up beside the other one are not its own: the model goes over to the other leg for seconds, while the
 * picture's motion goes on seeing the shank where it is. Where that was not followed nothing is said.
 * @param shank one a frame
 * @param between in which frames the points are known to lie between the legs: those do not tell where the shank is
 */
export function onOtherLeg(shank: readonly DirectionClue[], between: readonly boolean[]): readonly boolean[] {
  const own = shank.map((clue, i) => (between[i] && clue.turn ? { ...clue, landmarkDeg: null } : clue));
  const fused = fuseDirections(own, ALWAYS_CREDIBLE);
  return shank.map(({ landmarkDeg, turn }, i) => {
    const here = fused[i];
    if (between[i] && turn) return true;
    return here?.source === 'flow' && landmarkDeg !== null && Math.abs(wrapped(landmarkDeg - here.deg)) > OTHER_LEG_DEG;
  });
}
