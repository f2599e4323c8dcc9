import * as v from 'valibot';
import { EXERCISE_IDS } from '../exercises/exercise.ts';
import { LANDMARK_COUNT } from '../pose/landmarks.ts';
import { POSE_MODELS } from '../pose/model.ts';
import type { StickerName } from '../stickers/sticker-name.ts';
import type { UnseenReason } from '../stickers/unseen-reason.ts';
import { PER } from './recording-units.ts';
import { oneOf } from './shape.ts';

/** The word that every recording begins with. */
export const RECORDING_FORMAT = 'evenside-recording';
/** What is written of a set that the pose model sees; schema 1, without the camera, is still read. */
export const POSE_SCHEMA = 2;
/** What is written of a set by stickers; schema 3, without why one was unseen, is still read. */
export const STICKER_SCHEMA = 4;

/** Bounds that keep a wrong file from filling the memory. Chosen: an hour at 30 pictures a second fits. */
export const RECORDING_LIMITS = { characters: 120_000_000, frames: 120_000, levels: 10 } as const;

/** A point may lie outside its picture, yet not this far, tenths of px. Chosen: ten pictures of the largest camera. */
const FARTHEST = 400_000;
const FARTHEST_STICKER = (FARTHEST / PER.px) * PER.stickerPx;
const MOST_TURN = 100 * 360 * PER.deg;

const STICKER_NAMES = [
  'tip',
  'knuckle',
  'arch',
  'toe-2',
  'toe-3',
  'toe-4',
  'toe-5',
  'shin',
  'ankle',
  'forefoot',
] as const satisfies readonly StickerName[];

const whole = (from: number, to: number) => v.pipe(v.number(), v.integer(), v.minValue(from), v.maxValue(to));
const column = (from: number, to: number) => v.pipe(v.array(whole(from, to)), v.length(LANDMARK_COUNT));
const coordinates = column(-FARTHEST, FARTHEST);

const segmentShape = v.nullable(
  v.strictTuple([
    whole(-MOST_TURN, MOST_TURN),
    whole(0, MOST_TURN),
    whole(-PER.zncc, PER.zncc),
    whole(0, Number.MAX_SAFE_INTEGER),
  ]),
);

const cameraShape = v.nullable(
  v.strictTuple([
    whole(-MOST_TURN, MOST_TURN),
    whole(-FARTHEST * PER.cameraPx, FARTHEST * PER.cameraPx),
    whole(-FARTHEST * PER.cameraPx, FARTHEST * PER.cameraPx),
    whole(1, 100 * PER.scale),
    whole(0, PER.agreement),
    whole(0, Number.MAX_SAFE_INTEGER),
  ]),
);

/** Place each way, its error, and 1 where it was only guessed at; null: lost. */
const stickerShapeOfOne = v.nullable(
  v.strictTuple([
    whole(-FARTHEST_STICKER, FARTHEST_STICKER),
    whole(-FARTHEST_STICKER, FARTHEST_STICKER),
    whole(0, FARTHEST_STICKER),
    whole(0, 1),
  ]),
);
const stickersByName = v.record(v.picklist(STICKER_NAMES), stickerShapeOfOne);
/** By name: why one was not measured. */
const unseenShape = v.record(
  v.picklist(STICKER_NAMES),
  oneOf<UnseenReason>({ glare: true, 'like-surround': true, covered: true, lost: true }),
);
/** By name, 1 where they cannot be those of one foot, and why some were not measured; null: none found yet. */
const stickersShape = v.nullable(v.strictTuple([stickersByName, whole(0, 1), unseenShape]));
const olderStickersShape = v.nullable(v.strictTuple([stickersByName, whole(0, 1)]));

const frameEntries = {
  t: v.pipe(v.number(), v.finite()),
  p: v.nullable(v.strictTuple([coordinates, coordinates, coordinates, column(0, PER.visibility)])),
  m: v.nullable(v.strictTuple([segmentShape, segmentShape, segmentShape])),
  b: v.nullable(whole(0, 255 * PER.brightness)),
};
const frameShape = v.strictObject({ ...frameEntries, c: cameraShape });

const headEntries = {
  format: v.literal(RECORDING_FORMAT),
  source: v.strictObject({
    file: v.string(),
    width: whole(1, FARTHEST),
    height: whole(1, FARTHEST),
    durationMs: v.pipe(v.number(), v.finite(), v.minValue(0)),
  }),
  exercise: v.picklist(EXERCISE_IDS),
  side: oneOf({ left: true, right: true }),
};
const framesOf = <S extends v.GenericSchema>(frame: S) => v.pipe(v.array(frame), v.maxLength(RECORDING_LIMITS.frames));

const poseEntries = { ...headEntries, model: v.picklist(POSE_MODELS) };
const poseShape = v.strictObject({ ...poseEntries, schema: v.literal(POSE_SCHEMA), frames: framesOf(frameShape) });
/** Schema 1 did not know where the camera went. */
const olderShape = v.strictObject({ ...poseEntries, schema: v.literal(1), frames: framesOf(v.strictObject(frameEntries)) });
const stickerEntries = { ...headEntries, model: v.literal('stickers') };
const stickerFrameEntries = { t: frameEntries.t, b: frameEntries.b };
const stickerShape = v.strictObject({
  ...stickerEntries,
  schema: v.literal(STICKER_SCHEMA),
  frames: framesOf(v.strictObject({ ...stickerFrameEntries, s: stickersShape })),
});
/** Schema 3 did not say why a sticker was unseen. */
const olderStickerShape = v.strictObject({
  ...stickerEntries,
  schema: v.literal(3),
  frames: framesOf(v.strictObject({ ...stickerFrameEntries, s: olderStickersShape })),
});

/** The text of a recording once it is parsed as JSON. */
export const recordingShape = v.variant('schema', [poseShape, olderShape, stickerShape, olderStickerShape]);

export type WrittenRecordingJson = v.InferOutput<typeof poseShape> | v.InferOutput<typeof stickerShape>;
export type RecordingJson = v.InferOutput<typeof recordingShape>;
export type FrameJson = v.InferOutput<typeof frameShape>;
export type StickerFrameJson = v.InferOutput<typeof stickerShape>['frames'][number];
export type AnyFrameJson = RecordingJson['frames'][number];
export type AnyStickerFrameJson = Extract<AnyFrameJson, { s: unknown }>;
