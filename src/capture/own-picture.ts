import type { Picture } from './frame.ts';

/**
 * The same picture in memory of its own; `image` is closed. A camera's picture lies in one of the few buffers that the camera fills in turn: Chromium
 * gives no more pictures while two of them are open, and a picture is open for as long as the pose model looks at it.
 * @returns `image` itself, open, where it can't be copied as it is (pixels that only the graphics card has, or that are turned or stretched)
 */
export async function ownPicture(image: Picture): Promise<Picture> {
  // A copy already.
  if (!('format' in image)) return image;
  const { format, visibleRect, displayWidth, displayHeight, timestamp } = image;
  if (!format || visibleRect?.width !== displayWidth || visibleRect.height !== displayHeight) return image;
  let own: VideoFrame;
  try {
    const bytes = new Uint8Array(image.allocationSize());
    const layout = await image.copyTo(bytes);
    const colorSpace = image.colorSpace.toJSON();
    own = new VideoFrame(bytes, { format, codedWidth: displayWidth, codedHeight: displayHeight, timestamp, layout, colorSpace });
  } catch {
    return image;
  }
  image.close();
  return own;
}
