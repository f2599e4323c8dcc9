import * as v from 'valibot';
import { EXERCISE_IDS } from '../exercises/exercise.ts';
import { LANDMARK_COUNT } from '../pose/landmarks.ts';
import { POSE_MODELS } from '../pose/model.ts';
import { oneOf } from './shape.ts';

/** The word that every recording begins with. */
export const RECORDING_FORMAT = 'evenside-recording';
/** What is written; schema 1, without the camera, is still read. */
export const RECORDING_SCHEMA = 2;

/** How finely a recording keeps what it holds: units to one of what is measured. The format's own, see docs/recording-format.md. */
export const PER = {
  /** Of a pixel: far below what the model's points jitter. */
  px: 10,
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
export const RECORDING_LIMITS = { characters: 120_000_000, frames: 120_000 } as const;

/** A point may lie outside its picture, yet not this far, tenths of px. Chosen: ten pictures of the largest camera. */
const FARTHEST = 400_000;
const MOST_TURN = 100 * 360 * PER.deg;

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
  model: v.picklist(POSE_MODELS),
  exercise: v.picklist(EXERCISE_IDS),
  side: oneOf({ left: true, right: true }),
};
const framesOf = <S extends v.GenericSchema>(frame: S) => v.pipe(v.array(frame), v.maxLength(RECORDING_LIMITS.frames));

const writtenShape = v.strictObject({ ...headEntries, schema: v.literal(RECORDING_SCHEMA), frames: framesOf(frameShape) });
/** Schema 1 did not know where the camera went. */
const olderShape = v.strictObject({ ...headEntries, schema: v.literal(1), frames: framesOf(v.strictObject(frameEntries)) });

/** The text of a recording once it is parsed as JSON. */
export const recordingShape = v.variant('schema', [writtenShape, olderShape]);

export type WrittenRecordingJson = v.InferOutput<typeof writtenShape>;
export type RecordingJson = v.InferOutput<typeof recordingShape>;
export type FrameJson = WrittenRecordingJson['frames'][number];
export type AnyFrameJson = RecordingJson['frames'][number];
