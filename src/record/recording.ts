import type { ExerciseId } from '../exercises/exercise.ts';
import type { CameraMotion } from '../flow/camera-motion.ts';
import type { LegMotion, SegmentTurn } from '../flow/leg-motion.ts';
import type { Observation } from '../measure/observation.ts';
import type { Landmark, Side } from '../pose/landmarks.ts';
import type { PoseModel } from '../pose/model.ts';
import { fail, ok, type Result } from '../result.ts';
import { deg, type Ms, ms, px, ratio } from '../units.ts';
import { levelsOf } from './json-levels.ts';
import {
  type AnyFrameJson,
  type FrameJson,
  POSE_SCHEMA,
  RECORDING_FORMAT,
  RECORDING_LIMITS,
  type RecordingJson,
  recordingShape,
  STICKER_SCHEMA,
  type WrittenRecordingJson,
} from './recording-shape.ts';
import { PER, units } from './recording-units.ts';
import { shaped } from './shape.ts';
import { stickerFrameJson, stickerObservation } from './sticker-frame.ts';

/** What a recording says of where it came from. */
export interface RecordingMeta {
  /** `width` and `height` in px of the upright picture. */
  readonly source: { readonly file: string; readonly width: number; readonly height: number; readonly durationMs: Ms };
  /** `stickers`: no pose model, the set was seen through stickers. */
  readonly model: PoseModel | 'stickers';
  readonly exercise: ExerciseId;
  readonly side: Side;
}

/** What the measurement heard of a set, frame by frame: measuring it again needs no picture. */
export interface Recording extends RecordingMeta {
  readonly observations: readonly Observation[];
}

/** Why a text is no recording that can be read. */
export type RecordingError =
  | { readonly kind: 'recording-too-large'; readonly characters: number; readonly limit: number }
  | { readonly kind: 'recording-not-json' }
  /** JSON, but of something else. */
  | { readonly kind: 'recording-other-format' }
  /** Of a newer version of the program. */
  | { readonly kind: 'recording-newer'; readonly schema: number; readonly known: number }
  /** The first thing wrong: `where` as in `frames[3].p[0][12]`, and `what` is wrong there. */
  | { readonly kind: 'recording-wrong'; readonly where: string; readonly what: string };

type PoseJson = NonNullable<FrameJson['p']>;
type SegmentJson = NonNullable<NonNullable<FrameJson['m']>[number]>;

const poseJson = (points: readonly Landmark[]): PoseJson => [
  points.map(({ x }) => units(x, PER.px)),
  points.map(({ y }) => units(y, PER.px)),
  points.map(({ z }) => units(z, PER.px)),
  points.map(({ visibility }) => units(visibility, PER.visibility)),
];

const segmentJson = (turn: SegmentTurn | null): SegmentJson | null =>
  turn && [units(turn.turnDeg, PER.deg), units(turn.seDeg, PER.deg), units(turn.zncc, PER.zncc), turn.anchor];

const motionJson = ({ foot, shank, thigh }: LegMotion): FrameJson['m'] => [
  segmentJson(foot),
  segmentJson(shank),
  segmentJson(thigh),
];

const cameraJson = (c: CameraMotion): NonNullable<FrameJson['c']> => [
  units(c.rotationDeg, PER.cameraDeg),
  units(c.shiftX, PER.cameraPx),
  units(c.shiftY, PER.cameraPx),
  units(c.scale, PER.scale),
  units(c.agreement, PER.agreement),
  c.points,
];

const frameJson = ({ tMs, landmarks, motion, camera, brightness }: Observation): FrameJson => ({
  t: units(tMs, PER.ms) / PER.ms,
  p: landmarks && poseJson(landmarks),
  m: motion && motionJson(motion),
  b: brightness === null ? null : units(brightness, PER.brightness),
  c: camera && cameraJson(camera),
});

/**
 * Writes observations as a recording, see docs/recording-format.md. What is kept is rounded as `PER` says.
 * @throws Error when the observations are none that can be read back, which no source gives: times that don't advance, NaN, not 33 points
 */
export function encodeRecording(observations: readonly Observation[], meta: RecordingMeta): string {
  const { source, model, exercise, side } = meta;
  const { file, width, height } = source;
  const head = {
    source: { file, width, height, durationMs: units(source.durationMs, PER.ms) / PER.ms },
    model,
    exercise,
    side,
  };
  const recording: WrittenRecordingJson =
    model === 'stickers'
      ? { format: RECORDING_FORMAT, schema: STICKER_SCHEMA, ...head, model, frames: observations.map(stickerFrameJson) }
      : { format: RECORDING_FORMAT, schema: POSE_SCHEMA, ...head, model, frames: observations.map(frameJson) };
  const wrong = faultOf(recording);
  if (wrong) throw new Error(`encodeRecording requires observations that can be read back, got ${wrong.where}: ${wrong.what}`);
  // One frame a line, so that a difference between two recordings can be read.
  const { frames, ...before } = recording;
  const lines = frames.map((frame) => JSON.stringify(frame)).join(',\n');
  return `${JSON.stringify(before).slice(0, -1)},"frames":[\n${lines}\n]}\n`;
}

interface Fault {
  readonly where: string;
  readonly what: string;
}

/** The first thing wrong with a value that should be a recording; null when all is right. */
function faultOf(value: unknown): Fault | null {
  const found = shaped(recordingShape, value);
  if (!found.ok) return found.error;
  const { frames } = found.value;
  const late = frames.findIndex(({ t }, i) => i > 0 && t <= (frames[i - 1]?.t ?? 0));
  return late < 0 ? null : { where: `frames[${late}].t`, what: 'Expected a time after the frame before' };
}

const landmarksOf = ([x, y, z, visibility]: PoseJson): readonly Landmark[] =>
  x.map((_, i) => ({
    x: px((x[i] as number) / PER.px),
    y: px((y[i] as number) / PER.px),
    z: px((z[i] as number) / PER.px),
    visibility: ratio((visibility[i] as number) / PER.visibility),
  }));

const turnOf = (segment: SegmentJson | null): SegmentTurn | null => {
  if (!segment) return null;
  const [turn, se, zncc, anchor] = segment;
  return { turnDeg: deg(turn / PER.deg), seDeg: deg(se / PER.deg), zncc: ratio(zncc / PER.zncc), anchor };
};

const cameraOf = ([rotation, x, y, scale, agreement, points]: NonNullable<FrameJson['c']>): CameraMotion => ({
  rotationDeg: deg(rotation / PER.cameraDeg),
  shiftX: px(x / PER.cameraPx),
  shiftY: px(y / PER.cameraPx),
  scale: ratio(scale / PER.scale),
  agreement: ratio(agreement / PER.agreement),
  points,
});

function observationOf(frame: AnyFrameJson): Observation {
  if ('s' in frame) return stickerObservation(frame);
  const tMs = ms(frame.t);
  const brightness = frame.b === null ? null : frame.b / PER.brightness;
  const { p, m } = frame;
  return {
    tMs,
    landmarks: p && landmarksOf(p),
    motion: m && { foot: turnOf(m[0]), shank: turnOf(m[1]), thigh: turnOf(m[2]) },
    camera: 'c' in frame && frame.c ? cameraOf(frame.c) : null,
    brightness,
  };
}

/** Reads a recording; the whole text is checked before anything of it is used. */
export function decodeRecording(text: string): Result<Recording, RecordingError> {
  const { characters: limit } = RECORDING_LIMITS;
  if (text.length > limit) return fail({ kind: 'recording-too-large', characters: text.length, limit });
  if (levelsOf(text, RECORDING_LIMITS.levels) > RECORDING_LIMITS.levels) return fail({ kind: 'recording-other-format' });
  let value: unknown;
  try {
    value = JSON.parse(text);
  } catch {
    return fail({ kind: 'recording-not-json' });
  }
  if (typeof value !== 'object' || value === null || !('format' in value) || value.format !== RECORDING_FORMAT) {
    return fail({ kind: 'recording-other-format' });
  }
  if ('schema' in value && typeof value.schema === 'number' && value.schema > STICKER_SCHEMA) {
    return fail({ kind: 'recording-newer', schema: value.schema, known: STICKER_SCHEMA });
  }
  const wrong = faultOf(value);
  if (wrong) return fail({ kind: 'recording-wrong', where: wrong.where, what: wrong.what });
  const { source, model, exercise, side, frames } = value as RecordingJson;
  return ok({
    source: { ...source, durationMs: ms(source.durationMs) },
    model,
    exercise,
    side,
    observations: frames.map(observationOf),
  });
}
