import type { Frame } from './frame.ts';

/** The picture as its decoder gave it, for tools that run in one browser only. @throws Error for a copy */
export function decodedOf({ image }: Frame): VideoFrame {
  if (!('format' in image)) throw new Error('decodedOf requires a decoded picture, got a copy');
  return image;
}
