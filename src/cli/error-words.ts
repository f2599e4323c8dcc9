import type { DefinitionError } from '../exercises/exercise-definition.ts';
import type { RecordingError, RecordingMeta } from '../record/recording.ts';
import type { WatchError } from './page-protocol.ts';
import { plainWords } from './plain-words.ts';

const seconds = (x: number): string => (x / 1000).toFixed(1);

/** What was wrong with what could have been stickers, and what to do. */
const STICKERS_WANTED: Readonly<Record<Extract<WatchError, { readonly kind: 'no-stickers' }>['why'], string>> = {
  'like-surround':
    'their colour is too much like what lies around them, so use stickers of a vivid colour, or name it with --sticker-colour',
  'too-small': 'they are too small in the picture, so bring the camera nearer',
  glare: 'light glints on them, so move the lamp or use matt stickers',
  'not-round': 'what is coloured there is not round, so film the foot square from its inner side',
  'room-same-colour': 'more than three things have their colour, so take the others away or use another colour',
  'too-few': 'three round ones of a vivid colour must be seen on the inner side of the foot, from the first picture on',
};

/** One sentence for what keeps a video from being measured: what is wrong and what to do. */
export function watchWords(error: WatchError, clip: string): string {
  switch (error.kind) {
    case 'file-empty':
      return `${clip} is empty: choose the video file again, perhaps it was not copied completely.`;
    case 'file-not-video':
      return `${clip} is no video file that can be read, or is damaged at its start: give an MP4, MOV or WebM file.`;
    case 'file-no-picture':
      return `${clip} holds sound but no picture: give the video itself.`;
    case 'file-codec':
      return `${clip} is packed as ${error.codec}, which this browser can't decode: save it as H.264 (MP4) and try again.`;
    case 'file-damaged':
    case 'file-broken':
      return `${clip} is damaged after ${seconds(error.readToMs)} s: copy it again from where it was recorded.`;
    case 'bundle-missing':
    case 'bundle-broken-off':
    case 'bundle-wrong':
      return 'The pose model could not be loaded: run npm ci, then node models/assemble.mjs.';
    case 'pose-wasm':
    case 'pose-model':
      return `The pose model does not start in this browser (${error.detail}): install a current Chrome or Chromium with WebGL 2.`;
    case 'pose-failed':
      return `The pose model stopped while it looked at ${clip} (${error.detail}): try again, or choose another --model.`;
    case 'camera-lost':
      return 'The camera was lost.';
    case 'no-stickers':
      return `No stickers were found in ${clip}: ${STICKERS_WANTED[error.why]}.`;
    case 'no-skin-point':
      return error.refused.kind === 'outside'
        ? `The point ${error.refused.name} lies outside of the picture of ${clip}: give its place in px from the upper left corner.`
        : `The skin at the point ${error.refused.name} shows no mark that could be followed in ${clip}: choose a crease or the nail's edge nearby, or use stickers.`;
    default:
      return error satisfies never;
  }
}

/** One sentence for what is wrong with a recording. */
export function recordingWords(error: RecordingError, clip: string): string {
  switch (error.kind) {
    case 'recording-too-large':
      return `${clip} is too large for a recording (${error.characters} characters, at most ${error.limit}): measure a shorter one.`;
    case 'recording-not-json':
      return `${clip} is damaged or no recording: make it again with --landmarks.`;
    case 'recording-other-format':
      return `${clip} is JSON but no landmark recording: give a file made with --landmarks.`;
    case 'recording-newer':
      return `${clip} was made by a newer version (format ${error.schema}, this one knows ${error.known}): update this program.`;
    case 'recording-wrong':
      return `${clip} is no valid recording: at ${plainWords(error.where)}, ${plainWords(error.what)}.`;
    default:
      return error satisfies never;
  }
}

/** One sentence for what is wrong with a file that should define an exercise. */
export const definitionWords = ({ words }: DefinitionError, file: string): string => `In ${file}, ${words}`;

/** What a recording must be of. */
type Wanted = Pick<RecordingMeta, 'exercise' | 'side'>;

/**
 * One sentence for a recording of another exercise or of the other leg than asked for; null when it is the one. The picture's motion was followed for its
 * own leg and exercise only, so that anything else measured from it would be no measurement.
 */
export function mismatchWords(found: Wanted, wanted: Wanted, clip: string): string | null {
  const otherExercise = found.exercise !== wanted.exercise;
  const otherSide = found.side !== wanted.side;
  if (!otherExercise && !otherSide) return null;
  const not = [...(otherExercise ? [wanted.exercise] : []), ...(otherSide ? [`the ${wanted.side}`] : [])].join(' with ');
  const use = [...(otherExercise ? [`--exercise ${found.exercise}`] : []), ...(otherSide ? [`--side ${found.side}`] : [])].join(
    ' ',
  );
  return `${clip} is a recording of ${found.exercise} with the ${found.side} leg, not ${not}: use ${use}, or record the video again.`;
}
