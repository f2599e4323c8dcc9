import type { CameraMotion } from '../flow/camera-motion.ts';
import type { LegMotion } from '../flow/leg-motion.ts';
import type { Landmark } from '../pose/landmarks.ts';
import type { Ms } from '../units.ts';
import type { StickersSeen } from './stickers-seen.ts';

/** All that the measurement hears of one frame: where the body is, and how the leg's parts have turned in the picture. */
export interface Observation {
  readonly tMs: Ms;
  /** 33 landmarks in px of the upright picture; null when nobody was seen, or when this frame was not given to the pose model. */
  readonly landmarks: readonly Landmark[] | null;
  /** The picture's own motion; null when it was not measured. */
  readonly motion: LegMotion | null;
  /** How the room has moved in the picture, because the camera has; null when it was not measured. */
  readonly camera: CameraMotion | null;
  /** Mean brightness of the picture, 0 to 255; null when not measured. */
  readonly brightness: number | null;
  /** Only of a set by stickers, which has no pose and no motion; null when none of them has been found yet. */
  readonly stickers?: StickersSeen | null;
}
