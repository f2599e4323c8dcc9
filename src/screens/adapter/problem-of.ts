import type { CameraError } from '../../capture/camera.ts';
import type { VideoFileError } from '../../capture/video-file.ts';
import type { SetError } from '../../record/store-error.ts';
import type { SessionError } from '../../run/session.ts';
import type { Problem } from '../services.ts';

/** The word that a failure's sentence quotes; the rest of a failure is for a report of a fault. */
function detailOf(error: CameraError | VideoFileError | SetError): string | null {
  if (error.kind === 'file-codec') return error.codec;
  if (error.kind === 'camera-denied') return error.by;
  return null;
}

/** A failure of the camera, a file or the store as the screens tell it. */
export function problemOf(error: CameraError | VideoFileError | SetError): Problem {
  const detail = detailOf(error);
  return detail === null ? { kind: error.kind } : { kind: error.kind, detail };
}

/** How a set broke off, with the way to what was kept. */
export function problemOfSession(error: SessionError): Problem {
  if (error.kind === 'nothing-measured') return { kind: error.kind, warnings: error.result.quality.warnings };
  return error.kept ? { kind: error.kind, keptId: error.kept.id } : { kind: error.kind };
}
