import type { Ms } from '../units.ts';

/** How far a picture must be turned clockwise to stand upright, in degrees. */
export type QuarterTurn = 0 | 90 | 180 | 270;

/** One picture of a source with its own time. Whoever receives it closes `image`, once. */
export interface Frame {
  /** Milliseconds on the source's clock, strictly increasing within one source. */
  readonly tMs: Ms;
  /** The picture as decoded, before `turn`. */
  readonly image: VideoFrame;
  /** Clockwise turn that sets the picture upright (a phone's rotation flag). */
  readonly turn: QuarterTurn;
}

/** The size of the upright picture in pixels. */
export interface PictureSize {
  readonly width: number;
  readonly height: number;
}

/** Size of `image` once turned upright. Units: px. */
export const uprightSize = (image: VideoFrame, turn: QuarterTurn): PictureSize =>
  turn === 90 || turn === 270
    ? { width: image.displayHeight, height: image.displayWidth }
    : { width: image.displayWidth, height: image.displayHeight };
