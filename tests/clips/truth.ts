import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import type { ExerciseId } from '../../src/exercises/exercise.ts';
import type { Side } from '../../src/pose/landmarks.ts';
import { exerciseShown } from './exercise-shown.ts';

/** One movement that counts, as the clip was rendered. Angles of the joint that `measures` names. */
export interface TrueRep {
  readonly startMs: number;
  readonly peakMs: number;
  readonly endMs: number;
  /** How long it was held at the top, ms. */
  readonly holdMs: number;
  readonly trueStartDeg: number;
  readonly truePeakDeg: number;
  readonly trueRangeDeg: number;
}

/** What is known of a clip: its bodies are rendered at known joint angles. */
export interface ClipTruth {
  readonly id: string;
  readonly side: Side;
  /** What was done, in words. */
  readonly exercise: string;
  readonly measures: 'ankle' | 'hip' | 'knee' | 'toe';
  readonly reps: readonly TrueRep[];
  /** Of every frame: when, the ankle's angle, how high the leg is held, and in glides how far the head is lifted. */
  readonly frames: readonly {
    readonly tMs: number;
    readonly ankleDeg: number;
    readonly legElevationDeg: number;
    readonly neckDeg?: number;
    /** Between the stickers as drawn, from rest. */
    readonly toeInPictureDeg?: number;
    readonly ankleInPictureDeg?: number;
    readonly stickersPx?: Readonly<Record<string, readonly [number, number]>>;
  }[];
}

/** @throws Error for a clip of a movement that nothing here measures */
export function exerciseOfClip(truth: Pick<ClipTruth, 'measures' | 'exercise'>): ExerciseId {
  const exercise = exerciseShown(truth);
  if (!exercise) throw new Error(`exerciseOfClip requires a movement that is measured, got ${truth.exercise}`);
  return exercise;
}

export const clipPath = (id: string): string => join(import.meta.dirname, `${id}.mp4`);

export const truthOf = (id: string): ClipTruth =>
  JSON.parse(readFileSync(join(import.meta.dirname, `${id}.truth.json`), 'utf8')) as ClipTruth;
