import type { CameraError } from '../../capture/camera.ts';
import type { PhotoError } from '../../capture/photo.ts';
import type { SharedWindowError } from '../../capture/shared-window.ts';
import type { VideoFileError } from '../../capture/video-file.ts';
import type { SetError } from '../../record/store-error.ts';
import type { SessionError } from '../../run/session.ts';
import type { Pictures, Problem } from '../services.ts';

/** The word that a failure's sentence quotes; the rest of a failure is for a report of a fault. */
function detailOf(error: CameraError | SharedWindowError | VideoFileError | PhotoError | SetError): string | null {
  if (error.kind === 'file-codec') return error.codec;
  if (error.kind === 'camera-denied') return error.by;
  return null;
}

/** A failure of the camera, a file or the store as the screens tell it. */
export function problemOf(error: CameraError | SharedWindowError | VideoFileError | PhotoError | SetError): Problem {
  const detail = detailOf(error);
  return detail === null ? { kind: error.kind } : { kind: error.kind, detail };
}

/** How a set broke off, with the way to what was kept. A shared window that goes away is no camera. */
export function problemOfSession(error: SessionError, from: Pictures['kind']): Problem {
  if (error.kind === 'nothing-measured') return { kind: error.kind, warnings: error.result.quality.warnings };
  const kind = error.kind === 'camera-lost' && from === 'window' ? 'window-lost' : error.kind;
  return error.kept ? { kind, keptId: error.kept.id } : { kind };
}
