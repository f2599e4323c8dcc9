import { type Ms, ms } from '../units.ts';
import { type Landmark, type LandmarkName, landmark, type Side } from './landmarks.ts';

/** A segment may come out this much longer or shorter than usual before a frame counts as implausible. Chosen: a leg in a side view keeps
 *  its length in the picture within about 15 % through a full raise; the model's mistakes jump by a third and more. */
export const LENGTH_TOLERANCE = 0.35;
/** Implausible for this long means that tracking has gone astray, not that one frame was bad. Chosen. */
export const ASTRAY_AFTER_MS = 400;
/** Time constant over which the usual length follows. Chosen: slow against a movement, quick against moving a chair. */
const USUAL_FOLLOWS_MS = 4000;

/** How the near leg's thigh and shank have looked so far. `null` before the first pose. */
export interface Steadiness {
  readonly tMs: Ms;
  readonly thigh: number;
  readonly shank: number;
  /** Since when the lengths have been implausible, or null. */
  readonly oddSinceMs: Ms | null;
}

const length = (landmarks: readonly Landmark[], a: LandmarkName, b: LandmarkName): number => {
  const p = landmark(landmarks, a);
  const q = landmark(landmarks, b);
  return Math.hypot(p.x - q.x, p.y - q.y);
};

/**
 * Takes the next pose into account.
 * @returns the new state, and whether tracking has gone astray so that the person should be searched afresh
 */
export function watchLengths(
  state: Steadiness | null,
  landmarks: readonly Landmark[],
  side: Side,
  tMs: Ms,
): { readonly state: Steadiness; readonly astray: boolean } {
  const thigh = length(landmarks, `${side}Hip`, `${side}Knee`);
  const shank = length(landmarks, `${side}Knee`, `${side}Ankle`);
  if (!state) return { state: { tMs, thigh, shank, oddSinceMs: null }, astray: false };
  const off = Math.max(Math.abs(thigh / state.thigh - 1), Math.abs(shank / state.shank - 1));
  if (off > LENGTH_TOLERANCE) {
    const oddSinceMs = state.oddSinceMs ?? tMs;
    return { state: { ...state, tMs, oddSinceMs }, astray: tMs - oddSinceMs >= ASTRAY_AFTER_MS };
  }
  const follow = 1 - Math.exp(-Math.max(0, tMs - state.tMs) / USUAL_FOLLOWS_MS);
  const next = (usual: number, now: number) => usual + follow * (now - usual);
  return {
    state: { tMs: ms(tMs), thigh: next(state.thigh, thigh), shank: next(state.shank, shank), oddSinceMs: null },
    astray: false,
  };
}
