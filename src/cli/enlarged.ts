import type { PictureSize } from '../capture/frame.ts';

/**
 * A decoded picture in the middle of a larger one, scaled to its height, as a camera of more pixels would see the same scene. It comes as the decoders and
 * cameras give pictures (I420), so that it is read in the same way. Closes `image`.
 * @param size px, even
 */
export function enlarged(image: VideoFrame, { width, height }: PictureSize): VideoFrame {
  const context = new OffscreenCanvas(width, height).getContext('2d', { alpha: false, willReadFrequently: true });
  if (!context) throw new Error('enlarged requires a 2d context, got none');
  const shown = (image.displayWidth * height) / image.displayHeight;
  context.drawImage(image, (width - shown) / 2, 0, shown, height);
  const { timestamp } = image;
  image.close();
  const planes = i420Of(context.getImageData(0, 0, width, height).data, width, height);
  const colorSpace = { matrix: 'smpte170m', fullRange: true, primaries: 'bt709', transfer: 'bt709' } as const;
  return new VideoFrame(planes, { format: 'I420', codedWidth: width, codedHeight: height, timestamp, colorSpace });
}

/** Brightness of every pixel, then both colour differences of every second one in every second row. Weights of ITU-R BT.601, full range. */
function i420Of(rgba: Uint8ClampedArray, width: number, height: number): Uint8Array<ArrayBuffer> {
  const planes = new Uint8Array((width * height * 3) / 2);
  const half = width / 2;
  const u = width * height;
  const v = u + u / 4;
  for (let y = 0; y < height; y += 1) {
    for (let x = 0; x < width; x += 1) {
      const p = 4 * (y * width + x);
      const [r, g, b] = [rgba[p] as number, rgba[p + 1] as number, rgba[p + 2] as number];
      planes[y * width + x] = (77 * r + 150 * g + 29 * b) >> 8;
      if (x % 2 === 1 || y % 2 === 1) continue;
      const c = (y / 2) * half + x / 2;
      planes[u + c] = 128 + ((-43 * r - 85 * g + 127 * b) >> 8);
      planes[v + c] = 128 + ((127 * r - 106 * g - 21 * b) >> 8);
    }
  }
  return planes;
}
