import { type DirectionClue, fuseDirections } from '../signal/fused-direction.ts';
import { wrapped } from '../units.ts';

/** Further than this from where the picture's motion has the shank of a held leg, the points are the other leg's. Chosen: a shank's own points scatter by up to 13 degrees with the leg held high, and the other leg lies 30 and more away. */
export const OTHER_LEG_DEG = 15;
/** Of a held leg a turn in the picture is believed however far the points are from it. */
export const ALWAYS_CREDIBLE = Number.POSITIVE_INFINITY;

/**
 * In which frames the points of a leg that is held up beside the other one are not its own: the model goes over to the other leg for seconds, while the
 * picture's motion goes on seeing the shank where it is. Where that was not followed nothing is said.
 * @param shank one a frame
 */
export function onOtherLeg(shank: readonly DirectionClue[]): readonly boolean[] {
  const fused = fuseDirections(shank, ALWAYS_CREDIBLE);
  return shank.map(({ landmarkDeg }, i) => {
    const here = fused[i];
    return here?.source === 'flow' && landmarkDeg !== null && Math.abs(wrapped(landmarkDeg - here.deg)) > OTHER_LEG_DEG;
  });
}
