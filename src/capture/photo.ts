import { fail, ok, type Result } from '../result.ts';
import type { PictureSize } from './frame.ts';

export type PhotoError = { readonly kind: 'photo-unreadable' };

/** A photo set upright, as its own note of the camera's turn says. Whoever receives it closes `picture`. */
export interface Photo {
  readonly picture: ImageBitmap;
  readonly size: PictureSize;
}

/** Larger photos are made this long on their longer side, px. Chosen: the pose model looks at 256, and a point is set to a pixel of this. */
const LONGEST_PX = 1920;

/** Reads a picture file that the browser can show. */
export async function openPhoto(file: Blob): Promise<Result<Photo, PhotoError>> {
  try {
    const whole = await createImageBitmap(file);
    const { width, height } = whole;
    const scale = Math.min(1, LONGEST_PX / Math.max(width, height));
    if (scale === 1) return ok({ picture: whole, size: { width, height } });
    const size = { width: Math.round(width * scale), height: Math.round(height * scale) };
    const picture = await createImageBitmap(whole, { resizeWidth: size.width, resizeHeight: size.height, resizeQuality: 'high' });
    whole.close();
    return ok({ picture, size });
  } catch {
    return fail({ kind: 'photo-unreadable' });
  }
}
