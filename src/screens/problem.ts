import type { CameraError } from '../capture/camera.ts';
import type { PhotoError } from '../capture/photo.ts';
import type { SharedWindowError } from '../capture/shared-window.ts';
import type { VideoFileError } from '../capture/video-file.ts';
import type { QualityWarning } from '../measure/set-result.ts';
import type { LockError } from '../record/lock/lock-error.ts';
import type { SetError } from '../record/store-error.ts';
import type { CameraElsewhere } from '../run/camera-hold.ts';
import type { PoseClientError } from '../run/pose-client.ts';
import type { SessionError } from '../run/session.ts';

/** What can fail in the screens' sight; the words stand in the catalogue under the same name. */
export type ProblemKind =
  | CameraError['kind']
  | CameraElsewhere['kind']
  | VideoFileError['kind']
  | SessionError['kind']
  | SetError['kind']
  | LockError['kind']
  | PoseClientError['kind']
  | SharedWindowError['kind']
  | PhotoError['kind']
  | 'example-missing'
  | 'window-lost'
  | 'person-missing'
  /** What was to be changed was changed in another tab meanwhile. */
  | 'changed-elsewhere'
  | 'unexpected';

export interface Problem {
  readonly kind: ProblemKind;
  /** A technical word for the curious: a codec, the browser's own wording. */
  readonly detail?: string;
  /** The stored set that was kept all the same. */
  readonly keptId?: string;
  /** What was in the way, when nothing was measured. */
  readonly warnings?: readonly QualityWarning[];
}
