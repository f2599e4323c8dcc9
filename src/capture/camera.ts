import { fail, ok, type Result } from '../result.ts';
import type { FrameTaken } from './between-frames.ts';
import { cameraFrames } from './camera-frames.ts';
import type { PictureSize } from './frame.ts';

/** A camera of this machine. */
export interface CameraDevice {
  readonly id: string;
  /** The maker's name for it; null until cameras were allowed. */
  readonly label: string | null;
}

/** Why a camera gives no picture. `detail` is the browser's own wording, for a report of a fault, not for people. */
export type CameraError =
  /** The page is neither on https nor on this machine; browsers give no camera then. */
  | { readonly kind: 'camera-insecure' }
  | { readonly kind: 'camera-unsupported' }
  /** `system`: the operating system keeps the browser from the camera; otherwise this page was refused. */
  | { readonly kind: 'camera-denied'; readonly by: 'person' | 'system' }
  | { readonly kind: 'camera-none' }
  /** The chosen camera is no longer there; others may be. */
  | { readonly kind: 'camera-gone' }
  | { readonly kind: 'camera-in-use' }
  | { readonly kind: 'camera-unreadable'; readonly detail: string }
  | { readonly kind: 'camera-constraints'; readonly constraint: string }
  /** Opened, but no picture came. */
  | { readonly kind: 'camera-silent' };

/** An open camera. */
export interface Camera {
  readonly device: CameraDevice;
  /** For a preview: set it as `srcObject`. */
  readonly stream: MediaStream;
  /** Of the pictures as they come, px. */
  readonly size: PictureSize;
  /** The newest picture whenever one is asked for, with the brightness of those between; throws `CameraLost` when the camera goes away. To be called once. */
  readonly frames: () => AsyncGenerator<FrameTaken, void, undefined>;
  /** Ends `frames`, switches the camera off. */
  readonly stop: () => void;
}

/**
 * What is asked of a camera: VGA at 30 pictures a second, which a 2-core machine keeps up with, or HD where it comes as often. Many cameras
 * give HD at 10 to 20 a second only, and a quick foot tap needs the rate more than the pixels. Chosen.
 */
const PICTURE: MediaTrackConstraints = {
  width: { min: 320, ideal: 640, max: 1280 },
  height: { min: 240, ideal: 480, max: 1280 },
  frameRate: { ideal: 30, max: 60 },
  advanced: [{ width: { exact: 1280 }, height: { exact: 720 }, frameRate: { min: 30 } }],
};
/** A camera that was switched on shows its first picture within this, or something else is wrong. Chosen: slow ones take two seconds. */
export const FIRST_PICTURE_MS = 8000;

const IN_USE = /in use|already|busy/i;
const BY_SYSTEM = /system/i;

/** What a refused `getUserMedia` means. Browsers share the names of the errors, not their words. */
export function cameraErrorOf(cause: unknown): CameraError {
  const { name, message } = cause instanceof Error ? cause : { name: '', message: String(cause) };
  switch (name) {
    case 'NotAllowedError':
    case 'SecurityError':
      return { kind: 'camera-denied', by: BY_SYSTEM.test(message) ? 'system' : 'person' };
    case 'NotFoundError':
      return { kind: 'camera-none' };
    case 'NotReadableError':
      return IN_USE.test(message) ? { kind: 'camera-in-use' } : { kind: 'camera-unreadable', detail: message };
    case 'OverconstrainedError': {
      const constraint = cause instanceof Error && 'constraint' in cause ? String(cause.constraint) : '';
      return constraint === 'deviceId' ? { kind: 'camera-gone' } : { kind: 'camera-constraints', constraint };
    }
    default:
      return { kind: 'camera-unreadable', detail: name ? `${name}: ${message}` : message };
  }
}

/** The cameras of this machine. Before cameras were allowed the browser names none of them and may tell of one only. */
export async function listCameras(): Promise<Result<readonly CameraDevice[], CameraError>> {
  const missing = whyNoCameras();
  if (missing) return fail(missing);
  try {
    const devices = await navigator.mediaDevices.enumerateDevices();
    return ok(
      devices.filter(({ kind }) => kind === 'videoinput').map(({ deviceId, label }) => ({ id: deviceId, label: label || null })),
    );
  } catch (cause) {
    return fail(cameraErrorOf(cause));
  }
}

/** Tells when a camera is plugged in or out. @returns stops telling */
export function watchCameras(onChange: () => void): () => void {
  const devices = navigator.mediaDevices as MediaDevices | undefined;
  devices?.addEventListener('devicechange', onChange);
  return () => devices?.removeEventListener('devicechange', onChange);
}

function whyNoCameras(): CameraError | null {
  if (!globalThis.isSecureContext) return { kind: 'camera-insecure' };
  return 'mediaDevices' in navigator ? null : { kind: 'camera-unsupported' };
}

/** The size of the pictures as they come: what a track says of itself is wrong on a phone held upright. Null: none came within `FIRST_PICTURE_MS`. */
export function firstPictureSize(stream: MediaStream): Promise<PictureSize | null> {
  const video = document.createElement('video');
  video.muted = true;
  video.playsInline = true;
  return new Promise<PictureSize | null>((resolve) => {
    const timer = setTimeout(() => resolve(null), FIRST_PICTURE_MS);
    video.onloadeddata = () => {
      clearTimeout(timer);
      resolve({ width: video.videoWidth, height: video.videoHeight });
    };
    video.srcObject = stream;
    // A refusal to play shows as no picture.
    video.play().catch(() => undefined);
  }).finally(() => {
    video.onloadeddata = null;
    video.srcObject = null;
  });
}

/**
 * Switches a camera on.
 * @param deviceId from `listCameras`; without it the browser's choice, on a phone the camera on the side of the screen
 */
export async function openCamera(deviceId?: string): Promise<Result<Camera, CameraError>> {
  const missing = whyNoCameras();
  if (missing) return fail(missing);
  let stream: MediaStream;
  try {
    const video = deviceId ? { ...PICTURE, deviceId: { exact: deviceId } } : { ...PICTURE, facingMode: 'user' };
    stream = await navigator.mediaDevices.getUserMedia({ video, audio: false });
  } catch (cause) {
    return fail(cameraErrorOf(cause));
  }
  const off = () => {
    for (const track of stream.getTracks()) track.stop();
  };
  const [track] = stream.getVideoTracks();
  const size = track ? await firstPictureSize(stream) : null;
  if (!track || !size) {
    off();
    return fail({ kind: 'camera-silent' });
  }
  const abort = new AbortController();
  return ok({
    device: { id: track.getSettings().deviceId ?? '', label: track.label || null },
    stream,
    size,
    frames: () => cameraFrames(stream, abort.signal),
    stop: () => {
      abort.abort();
      off();
    },
  });
}
