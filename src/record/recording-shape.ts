import * as v from 'valibot';
import { EXERCISE_IDS } from '../exercises/exercise.ts';
import { LANDMARK_COUNT } from '../pose/landmarks.ts';
import { POSE_MODELS } from '../pose/model.ts';
import type { StickerName } from '../stickers/sticker-name.ts';
import { oneOf } from './shape.ts';

/** The word that every recording begins with. */
export const RECORDING_FORMAT = 'evenside-recording';
/** What is written of a set that the pose model sees; schema 1, without the camera, is still read. */
export const POSE_SCHEMA = 2;
/** What is written of a set by stickers. */
export const STICKER_SCHEMA = 3;

/** How finely a recording keeps what it holds: units to one of what is measured. The format's own, see docs/recording-format.md. */
export const PER = {
  /** Of a pixel: far below what the model's points jitter. */
  px: 10,
  /** Of a pixel: far below what a sticker's centre is out by. */
  stickerPx: 1000,
  visibility: 100,
  deg: 100,
  zncc: 1000,
  brightness: 10,
  cameraDeg: 1000,
  cameraPx: 100,
  scale: 100_000,
  agreement: 100,
  /** Of a millisecond: the clock of a video file. */
  ms: 1000,
} as const;

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
/** By name, and 1 where they cannot be those of one foot; null: none found yet. */
const stickersShape = v.nullable(v.strictTuple([v.record(v.picklist(STICKER_NAMES), stickerShapeOfOne), whole(0, 1)]));

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
const stickerShape = v.strictObject({
  ...headEntries,
  model: v.literal('stickers'),
  schema: v.literal(STICKER_SCHEMA),
  frames: framesOf(v.strictObject({ t: frameEntries.t, b: frameEntries.b, s: stickersShape })),
});

/** The text of a recording once it is parsed as JSON. */
export const recordingShape = v.variant('schema', [poseShape, olderShape, stickerShape]);

export type WrittenRecordingJson = v.InferOutput<typeof poseShape> | v.InferOutput<typeof stickerShape>;
export type RecordingJson = v.InferOutput<typeof recordingShape>;
export type FrameJson = v.InferOutput<typeof frameShape>;
export type StickerFrameJson = v.InferOutput<typeof stickerShape>['frames'][number];
export type AnyFrameJson = RecordingJson['frames'][number];
