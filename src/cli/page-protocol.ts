import type { VideoFileError } from '../capture/video-file.ts';
import type { ExerciseId } from '../exercises/exercise.ts';
import type { ExerciseDefinition } from '../exercises/exercise-definition.ts';
import type { Side } from '../pose/landmarks.ts';
import type { PoseModel } from '../pose/model.ts';
import type { PoseClientError } from '../run/pose-client.ts';
import type { SessionBreak } from '../run/session-break.ts';
import type { StickerRefusal } from '../stickers/refusal.ts';
import type { SkinRefusal } from '../stickers/skin-points.ts';
import type { StickerWay } from './sticker-options.ts';

/** What the command line asks the page to watch. */
export interface WatchOrder {
  readonly exercise: ExerciseId | ExerciseDefinition;
  readonly side: Side;
  readonly model: PoseModel;
  /** Given: without the pose model. Left out: as is usual for the exercise. */
  readonly stickers?: StickerWay;
  /** Only every so many-th picture is given to the pose model; 1: each. */
  readonly poseEvery: number;
  /** Only so many pictures a second are looked at, as from a slow camera; left out: all. */
  readonly aSecond?: number;
}

/** No stickers were found in any picture; `why` is what was wrong in the first one. */
interface NoStickers {
  readonly kind: 'no-stickers';
  readonly why: StickerRefusal['kind'];
}

/** A point on bare skin can't be followed. */
interface NoSkinPoint {
  readonly kind: 'no-skin-point';
  readonly refused: SkinRefusal;
}

export type WatchError = VideoFileError | PoseClientError | SessionBreak | NoStickers | NoSkinPoint;

/** What the page answers: a landmark recording of the whole clip, as text, or why there is none. */
export type WatchAnswer =
  | { readonly ok: true; readonly recording: string; readonly watchMs: number }
  | { readonly ok: false; readonly error: WatchError };

declare global {
  interface Window {
    /** Set once the page is ready. */
    watchClip?: (order: WatchOrder) => Promise<WatchAnswer>;
    /** Set by the command line: hears of frames done. */
    frameDone?: (tMs: number, durationMs: number) => void;
  }
}
