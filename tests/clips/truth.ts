import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import type { ExerciseId } from '../../src/exercises/exercise.ts';
import type { Side } from '../../src/pose/landmarks.ts';

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
  /** Of every frame: when, and the ankle's angle. */
  readonly frames: readonly { readonly tMs: number; readonly ankleDeg: number; readonly toeInPictureDeg?: number }[];
}

const EXERCISE: Readonly<Record<ClipTruth['measures'], ExerciseId>> = {
  ankle: 'foot-tap',
  hip: 'leg-raise',
  knee: 'knee-straighten',
  toe: 'toe-lift',
};

export const exerciseOfClip = ({ measures, exercise }: Pick<ClipTruth, 'measures' | 'exercise'>): ExerciseId =>
  exercise === 'heel stand' ? 'heel-stand' : EXERCISE[measures];

export const clipPath = (id: string): string => join(import.meta.dirname, `${id}.mp4`);

export const truthOf = (id: string): ClipTruth =>
  JSON.parse(readFileSync(join(import.meta.dirname, `${id}.truth.json`), 'utf8')) as ClipTruth;
