import { type CameraLossCause, CameraLost } from '../capture/camera-frames.ts';
import { VideoFileBroken } from '../capture/video-file.ts';
import type { Ms } from '../units.ts';
import { PoseFailed } from './observations.ts';

/** Why a set's pictures broke off in the middle. */
export type SessionBreak =
  | { readonly kind: 'file-broken'; readonly readToMs: Ms }
  /** `turned`: the picture changed its shape, as when a phone is turned. */
  | { readonly kind: 'camera-lost'; readonly why: CameraLossCause }
  /** `detail` is for a report of a fault, not for people. */
  | { readonly kind: 'pose-failed'; readonly detail: string };

/** What something thrown by a source or the pose model means; null for a fault of the program. */
export function breakOf(cause: unknown): SessionBreak | null {
  if (cause instanceof VideoFileBroken) return { kind: 'file-broken', readToMs: cause.readToMs };
  if (cause instanceof CameraLost) return { kind: 'camera-lost', why: cause.why };
  if (cause instanceof PoseFailed) return { kind: 'pose-failed', detail: cause.message };
  return null;
}
