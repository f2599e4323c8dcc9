import { fail, ok, type Result } from '../result.ts';
import { firstPictureSize } from './camera.ts';
import type { PictureSize } from './frame.ts';

/** Why no window is shared. `detail` is the browser's own wording, for a report of a fault. */
export type SharedWindowError =
  | { readonly kind: 'window-unsupported' }
  /** The person closed the browser's question, or the browser does not allow it. */
  | { readonly kind: 'window-denied' }
  | { readonly kind: 'window-unreadable'; readonly detail: string }
  /** Shared, but no picture came, as of a window that is minimised. */
  | { readonly kind: 'window-silent' };

/** A window, tab or screen that is shared with this page. */
export interface SharedWindow {
  readonly stream: MediaStream;
  /** Of the whole picture, px. */
  readonly size: PictureSize;
  readonly stop: () => void;
}

/** A call's picture moves at 15 to 30 a second; more is not there. */
const PICTURE: MediaTrackConstraints = { frameRate: { ideal: 30, max: 30 } };

/** Asks which window to share, through the browser; to be called from a click. Sound is not asked for. */
export async function shareWindow(): Promise<Result<SharedWindow, SharedWindowError>> {
  const devices = navigator.mediaDevices as MediaDevices | undefined;
  if (!globalThis.isSecureContext || !devices || !('getDisplayMedia' in devices)) return fail({ kind: 'window-unsupported' });
  let stream: MediaStream;
  try {
    stream = await devices.getDisplayMedia({ video: PICTURE, audio: false });
  } catch (cause) {
    const { name, message } = cause instanceof Error ? cause : { name: '', message: String(cause) };
    if (name === 'NotAllowedError' || name === 'InvalidStateError') return fail({ kind: 'window-denied' });
    return fail({ kind: 'window-unreadable', detail: name ? `${name}: ${message}` : message });
  }
  const stop = () => {
    for (const track of stream.getTracks()) track.stop();
  };
  const size = await firstPictureSize(stream);
  if (!size) {
    stop();
    return fail({ kind: 'window-silent' });
  }
  return ok({ stream, size, stop });
}
