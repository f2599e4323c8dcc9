import type { Ms } from '../units.ts';

/** How far a picture must be turned clockwise to stand upright, in degrees. */
export type QuarterTurn = 0 | 90 | 180 | 270;

/** A picture as it was decoded or, where the browser can't hand those over (WebCodecs), a copy that stands upright already. */
export type Picture = VideoFrame | ImageBitmap;

/** One picture of a source with its own time. Whoever receives it closes `image`, once. */
export interface Frame {
  /** Milliseconds on the source's clock, strictly increasing within one source. */
  readonly tMs: Ms;
  /** The picture as decoded, before `turn`. */
  readonly image: Picture;
  /** Clockwise turn that sets the picture upright (a phone's rotation flag). */
  readonly turn: QuarterTurn;
}

/** The size of the upright picture in pixels. */
export interface PictureSize {
  readonly width: number;
  readonly height: number;
}

/** Size of `image` once turned upright. Units: px. */
export function uprightSize(image: Picture, turn: QuarterTurn): PictureSize {
  const { width, height } = shownSize(image);
  return turn === 90 || turn === 270 ? { width: height, height: width } : { width, height };
}

/** Size of `image` as it is drawn, before any turn. Units: px. */
export const shownSize = (image: Picture): PictureSize =>
  'displayWidth' in image ? { width: image.displayWidth, height: image.displayHeight } : image;
