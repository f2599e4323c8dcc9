import { existsSync } from 'node:fs';
import { readdir, readFile } from 'node:fs/promises';
import { join } from 'node:path';
import * as v from 'valibot';
import type { ExerciseId } from '../../src/exercises/exercise.ts';
import type { Side } from '../../src/pose/landmarks.ts';
import { fail, ok, type Result } from '../../src/result.ts';
import { exerciseShown } from '../../tests/clips/exercise-shown.ts';

const truthShape = v.object({
  id: v.string(),
  exercise: v.string(),
  side: v.picklist(['left', 'right']),
  measures: v.string(),
  model: v.string(),
  size: v.tuple([v.number(), v.number()]),
  fps: v.number(),
  durationMs: v.number(),
  /** Names the movement that this clip and others show over again, each filmed anew. */
  repeats: v.optional(v.string()),
  /** Made after the constants of the measurement were chosen, and not looked at for them. */
  heldOut: v.optional(v.boolean()),
  /** Filmed with stickers, where the exercise is seen by the pose model too. */
  seenBy: v.optional(v.literal('stickers')),
  /** Stickers were left out when it was rendered; the truth still says where they would be. */
  bare: v.optional(v.boolean()),
  camera: v.object({ yawDeg: v.number(), dist: v.number() }),
  reps: v.array(
    v.object({
      startMs: v.number(),
      endMs: v.number(),
      trueStartDeg: v.number(),
      truePeakDeg: v.number(),
      trueRangeDeg: v.number(),
    }),
  ),
  frames: v.array(
    v.object({
      tMs: v.number(),
      ankleDeg: v.number(),
      legElevationDeg: v.number(),
      kneeFlexionDeg: v.number(),
      /** The head's lift, in nerve glides. */
      neckDeg: v.optional(v.number()),
      /** Angle between the stickers as drawn, from rest. */
      toeInPictureDeg: v.optional(v.number()),
      ankleInPictureDeg: v.optional(v.number()),
      /** Where the stickers were drawn, px. */
      stickersPx: v.optional(v.record(v.string(), v.tuple([v.number(), v.number()]))),
    }),
  ),
});

export type Truth = v.InferOutput<typeof truthShape>;
/** One movement that counts, at the joint angles the body was rendered with. */
export type TrueRep = Truth['reps'][number];

/** A video and what is truly in it. */
export interface ClipWithTruth {
  readonly id: string;
  readonly path: string;
  readonly exercise: ExerciseId;
  readonly side: Side;
  readonly truth: Truth;
}

/** Clips of a folder: those that can be measured, and those of movements for which there is no measurement. */
export interface ClipFolder {
  readonly clips: readonly ClipWithTruth[];
  readonly skipped: readonly string[];
}

export type ClipFolderError =
  | { readonly kind: 'no-clips'; readonly words: string }
  | { readonly kind: 'bad-truth'; readonly words: string };

async function readTruth(path: string): Promise<Truth | null> {
  try {
    const parsed = v.safeParse(truthShape, JSON.parse(await readFile(path, 'utf8')));
    return parsed.success ? parsed.output : null;
  } catch {
    return null;
  }
}

/** The clips (`ID.mp4`) of a folder that have an `ID.truth.json` beside them, by name. */
export async function clipsIn(folder: string): Promise<Result<ClipFolder, ClipFolderError>> {
  const names = existsSync(folder) ? (await readdir(folder)).filter((name) => name.endsWith('.truth.json')).sort() : [];
  if (names.length === 0) {
    return fail({ kind: 'no-clips', words: `There is no ID.truth.json in ${folder}: name a folder of clips with known truth.` });
  }
  const clips: ClipWithTruth[] = [];
  const skipped: string[] = [];
  for (const name of names) {
    const id = name.replace('.truth.json', '');
    const path = join(folder, `${id}.mp4`);
    const truth = await readTruth(join(folder, name));
    if (!truth || !existsSync(path)) {
      const lacks = truth ? `has no ${id}.mp4 beside it` : 'does not say what is true of a clip';
      return fail({ kind: 'bad-truth', words: `${name} in ${folder} ${lacks}: make it again or take it away.` });
    }
    const exercise = exerciseShown(truth);
    if (exercise) clips.push({ id, path, exercise, side: truth.side, truth });
    else skipped.push(id);
  }
  return ok({ clips, skipped });
}
