import { parseArgs } from 'node:util';
import { MOST_BETWEEN } from '../capture/between-frames.ts';
import { EXERCISE_IDS, type ExerciseId, isExerciseId } from '../exercises/exercise.ts';
import { KNEE_LIMIT_DEG } from '../measure/knee-limit.ts';
import type { Side } from '../pose/landmarks.ts';
import { isPoseModel, POSE_MODELS, type PoseModel } from '../pose/model.ts';
import { fail, ok, type Result } from '../result.ts';
import type { Deg, Ms } from '../units.ts';
import { elevationLimit } from './glide-lines.ts';
import { legRaiseOptions } from './leg-raise-options.ts';
import { type StickerWay, stickerOptions } from './sticker-options.ts';

export interface MeasureArguments {
  readonly clip: string;
  /** Null: `exerciseFile` defines it. */
  readonly exercise: ExerciseId | null;
  readonly exerciseFile: string | null;
  readonly side: Side;
  readonly model: PoseModel;
  /** Null: by the pose model. */
  readonly stickers: StickerWay | null;
  /** Only every so many-th picture is given to the pose model; 1: each. */
  readonly poseEvery: number;
  /** Where the result goes as JSON; null: not written. */
  readonly json: string | null;
  /** Where the landmark recording goes; null: not written. */
  readonly landmarks: string | null;
  /** Where the angle through the set goes, as CSV or JSON by its name; null: not written. */
  readonly angles: string | null;
  /** Leg raise: the therapist's knee limit; null: the usual one. */
  readonly kneeLimitDeg: Deg | null;
  /** Leg raise: when symptoms began, from the clip's start; null: not said. */
  readonly onsetMs: Ms | null;
  /** Nerve glide: the leg's elevation at which symptoms begin; null: where it was held at the start. */
  readonly elevationLimitDeg: Deg | null;
}

export type ArgumentError = { readonly kind: 'bad-arguments'; readonly words: string };

/** One more than what comes between two poses at most, live. */
const MOST_POSE_EVERY = MOST_BETWEEN + 1;

export const HELP = `Measures a video file, or a landmark recording, without a screen.

  npm run measure -- CLIP --exercise ID --side left|right [--model lite|full|heavy] [--json OUT] [--landmarks OUT]
                     [--angles OUT] [--pose-every N] [--knee-limit DEG] [--onset SECONDS]
                     [--elevation-limit DEG]
                     [--by pose|stickers] [--sticker-colour '#rrggbb'] [--point NAME=x,y]

  CLIP             a video file (MP4, MOV, WebM), or a recording made with --landmarks: of this exercise and leg
  --exercise ID    ${EXERCISE_IDS.join(', ')}
  --exercise-file FILE  instead: an exercise of your own (docs/exercise-format.md)
  --side           the leg that moves, the person's own left or right; it must be the one nearest the camera
  --model          pose model: lite (fastest), full (default), heavy (most exact); a recording keeps its own
  --json OUT       writes the result to OUT as JSON (docs/result-format.md)
  --landmarks OUT  writes the landmark recording to OUT (docs/recording-format.md), or as a table when OUT ends in .csv
  --angles OUT     writes the angle of every picture to OUT, a .csv or .json file (docs/export-format.md)
  --pose-every N   gives only every Nth picture of a video (1 to ${MOST_POSE_EVERY}) to the pose model and only follows the leg in those between,
                   as it is live on a slow machine
  --knee-limit DEG leg raise: a knee bent by more than this beyond how it lies at rest is flagged (default ${KNEE_LIMIT_DEG})
  --onset SECONDS  leg raise: when symptoms began, from the clip's start
  --elevation-limit DEG  nerve glide: the leg is not to be held above this; left out, not above where it was at the start
  --by WAY         how it is seen: pose (the pose model) or stickers (three round ones on the skin, seen close by); toe-lift is seen by
                   stickers, foot-tap by either, the others by the pose model
  --sticker-colour '#16d84c'  the stickers' colour, where they are not found by themselves
  --point NAME=x,y toe-lift without stickers: where tip, knuckle and arch are in the first picture, in px from its upper left corner; give it three
                   times
  --help           shows this

A video is watched in a headless Chrome or Chromium on this machine; nothing leaves it. A recording needs no browser.
Exit code: 0 measured, 2 bad arguments or an unreadable file, 3 nothing measurable was seen.
`;

/** Whether a clip is a landmark recording, by its name. */
export const isRecording = (clip: string): boolean => clip.toLowerCase().endsWith('.json');

/** Whether a file is to be a table, by its name. */
export const isTable = (file: string): boolean => file.toLowerCase().endsWith('.csv');

const bad = (words: string) => fail({ kind: 'bad-arguments' as const, words: `${words} See npm run measure -- --help.` });

/** One sentence for what `parseArgs` threw. It explains itself in several, some on lines of their own. */
function parseWords(cause: unknown): string {
  const message = cause instanceof Error ? cause.message : String(cause);
  const lacking = cause instanceof Error && 'code' in cause && cause.code === 'ERR_PARSE_ARGS_INVALID_OPTION_VALUE';
  const option = /--[a-z-]+/.exec(message)?.[0];
  return lacking && option && option !== '--help'
    ? `Say after ${option} what it is to be.`
    : `${message.split(/\.(?:\s|$)/)[0] ?? ''}.`;
}

/** Reads the command line's words. @returns null when only help was asked for */
export function readArguments(args: readonly string[]): Result<MeasureArguments | null, ArgumentError> {
  const text = { type: 'string' } as const;
  let parsed: ReturnType<typeof parse>;
  const parse = () =>
    parseArgs({
      args: [...args],
      allowPositionals: true,
      tokens: true,
      options: {
        exercise: text,
        side: text,
        model: text,
        'pose-every': text,
        'exercise-file': text,
        json: text,
        landmarks: text,
        angles: text,
        'knee-limit': text,
        onset: text,
        'elevation-limit': text,
        by: text,
        'sticker-colour': text,
        point: { type: 'string', multiple: true },
        help: { type: 'boolean', short: 'h' },
      },
    });
  try {
    parsed = parse();
  } catch (cause) {
    return bad(parseWords(cause));
  }
  const { values, positionals, tokens } = parsed;
  if (values.help) return ok(null);
  const said = tokens.flatMap((token) => (token.kind === 'option' && token.name !== 'point' ? [token.name] : []));
  const twice = said.find((name, i) => said.indexOf(name) < i);
  if (twice !== undefined) return bad(`--${twice} is given twice: leave one out.`);
  if ([values.json, values.landmarks, values.angles].includes(''))
    return bad('Name the file after --json, --landmarks or --angles.');
  if (values.angles !== undefined && !/\.(csv|json)$/i.test(values.angles))
    return bad(`--angles writes a .csv or a .json file: end "${values.angles}" in one of them.`);
  const [clip, ...more] = positionals;
  if (!clip) return bad('Name the video file or recording to measure.');
  if (more.length > 0) return bad(`One clip at a time: "${more[0]}" is one too many.`);
  const { exercise, side, model = 'full' } = values;
  const exerciseFile = values['exercise-file'] ?? null;
  if (exerciseFile === '') return bad('Name the file after --exercise-file.');
  if (exercise && exerciseFile) return bad('Give --exercise or --exercise-file, not both.');
  if (!exercise && !exerciseFile) return bad(`Say which exercise it shows with --exercise: ${EXERCISE_IDS.join(', ')}.`);
  if (exercise !== undefined && !isExerciseId(exercise))
    return bad(`There is no exercise "${exercise}": choose one of ${EXERCISE_IDS.join(', ')}.`);
  if (side !== 'left' && side !== 'right')
    return bad(`Say which leg moves with --side left or --side right${side === undefined ? '' : `, not "${side}"`}.`);
  if (!isPoseModel(model)) return bad(`There is no model "${model}": choose one of ${POSE_MODELS.join(', ')}.`);
  const seen = stickerOptions({ by: values.by, colour: values['sticker-colour'], points: values.point }, exercise ?? null);
  if (!seen.ok) return bad(seen.error.words);
  const poseEvery = Number(values['pose-every'] ?? 1);
  if (!Number.isInteger(poseEvery) || poseEvery < 1 || poseEvery > MOST_POSE_EVERY)
    return bad(`--pose-every takes a whole number from 1 to ${MOST_POSE_EVERY}, not "${values['pose-every']}".`);
  if (seen.value?.skin && isRecording(clip)) return bad(`${clip} is a recording, watched already: --point is for videos.`);
  if (poseEvery > 1 && isRecording(clip)) return bad(`${clip} is a recording, watched already: --pose-every is for videos.`);
  const raise = legRaiseOptions({ kneeLimit: values['knee-limit'], onset: values.onset }, exercise ?? null);
  if (!raise.ok) return bad(raise.error.words);
  const limit = elevationLimit(values['elevation-limit'], exercise ?? null);
  if (!limit.ok) return bad(limit.error.words);
  return ok({
    clip,
    exercise: exercise ?? null,
    exerciseFile,
    side,
    model,
    stickers: seen.value,
    poseEvery,
    json: values.json ?? null,
    landmarks: values.landmarks ?? null,
    angles: values.angles ?? null,
    ...raise.value,
    elevationLimitDeg: limit.value,
  });
}
