import type { SetResult } from '../measure/set-result.ts';
import type { PoseModel } from '../pose/model.ts';

/** What was to be measured, as it is named to the person. */
interface Asked {
  readonly clip: string;
  /** An exercise's id, or the name of one's own. */
  readonly exercise: string;
  readonly model: PoseModel | 'stickers';
}

/** One sentence for a clip in which nothing could be measured: what is wrong and what to do; null: something was measured. */
export function noResultWords({ side, framesUsed, quality }: SetResult, { clip, exercise, model }: Asked): string | null {
  const { cameraTurnDeg, warnings } = quality;
  if (warnings.includes('camera-too-turned') && cameraTurnDeg !== null)
    return `The camera of ${clip} is turned ${Math.abs(cameraTurnDeg).toFixed(0)} degrees off the side view and nothing can be measured from there: put it square to the person's side, within 30 degrees.`;
  if (warnings.includes('far-leg'))
    return `In ${clip} the ${side} leg is the one turned away from the camera and cannot be measured: ask for the other side, or turn the person round (a mirrored video shows the other leg).`;
  if (warnings.includes('other-leg-up'))
    return `In ${clip} the ${side === 'left' ? 'right' : 'left'} leg is seen held up, and the ${side} one lies: hold up the leg nearest the camera and ask for its side. If that was so, film it in more light: in the dark the model takes one leg for the other.`;
  if (framesUsed > 0) return null;
  return model === 'stickers'
    ? `Nothing measurable was seen in ${clip}: all three stickers must be in the picture at once, the foot seen from its inner side.`
    : `Nothing measurable was seen in ${clip}: the ${side} leg must be in the picture, side-on and nearest the camera, as ${exercise} needs it.`;
}
