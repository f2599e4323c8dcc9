import type { FrameTaken } from './between-frames.ts';
import type { PictureSize } from './frame.ts';

/** A part of a picture, px from its upper left corner. */
export interface Crop {
  readonly left: number;
  readonly top: number;
  readonly width: number;
  readonly height: number;
}

/** A crop smaller than this holds no leg. Chosen. */
export const LEAST_CROP_PX = 96;

/**
 * The crop as pictures can be cut: inside of the picture, on even pixels, since colours are stored for two by two of them.
 * @returns null when that leaves less than `LEAST_CROP_PX` either way
 */
export function cutOf({ left, top, width, height }: Crop, size: PictureSize): Crop | null {
  const even = (x: number) => 2 * Math.floor(x / 2);
  const from = { x: even(Math.max(0, left)), y: even(Math.max(0, top)) };
  const cut = {
    left: from.x,
    top: from.y,
    width: even(Math.min(size.width, left + width) - from.x),
    height: even(Math.min(size.height, top + height) - from.y),
  };
  return cut.width >= LEAST_CROP_PX && cut.height >= LEAST_CROP_PX ? cut : null;
}

/**
 * The same frames, of which only a part is left; each image is closed and another one given. What came between two frames is left out: its brightness is
 * that of the whole picture.
 * @param crop from `cutOf`
 */
export async function* croppedFrames(
  frames: AsyncGenerator<FrameTaken, void, undefined>,
  crop: Crop,
): AsyncGenerator<FrameTaken, void, undefined> {
  const { left: x, top: y, width, height } = crop;
  for await (const { tMs, image, turn } of frames) {
    const part =
      'format' in image
        ? new VideoFrame(image, { visibleRect: { x, y, width, height }, displayWidth: width, displayHeight: height })
        : await createImageBitmap(image, x, y, width, height);
    image.close();
    yield { tMs, image: part, turn };
  }
}
