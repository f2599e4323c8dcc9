import type { Facing } from '../angles/joint-angle.ts';
import type { PictureSize } from '../capture/frame.ts';
import type { Exercise } from '../exercises/exercise.ts';
import type { Posture } from '../pose/head-up.ts';
import type { Side } from '../pose/landmarks.ts';
import { type Deg, deg, px } from '../units.ts';
import { turnSeen } from './camera-turn.ts';
import { facingOf, sampleOf } from './leg-sample.ts';
import type { LegDrawing, ViewAdvice } from './live-view.ts';
import type { Observation } from './observation.ts';
import { viewAdvice } from './view-advice.ts';

/** What one picture shows of the leg that is to be measured. */
export interface StillLeg {
  /** Null when it was not seen, or is the one turned away. */
  readonly leg: LegDrawing | null;
  /** Null with the leg. */
  readonly facing: Facing | null;
  /** How far the camera is turned; null: not known. */
  readonly turnDeg: Deg | null;
  /** What is wrong with the view, most urgent first. */
  readonly advice: readonly ViewAdvice[];
}

/** Reads a single picture. A lying person's feet lie away from the shoulder, however high the leg is raised. */
export function stillLeg(seen: Observation, exercise: Exercise, side: Side, size: PictureSize): StillLeg {
  const { posture } = exercise;
  const { points, other } = sampleOf(seen, side);
  const advice = viewAdvice(seen, exercise, side, size);
  if (!points || !other) return { leg: null, facing: null, turnDeg: null, advice };
  const turn = turnSeen(points, other, posture);
  const lying = points.shoulder.x > points.hip.x ? 'left' : 'right';
  return {
    leg: points,
    facing: posture === 'lying' ? lying : facingOf(points, posture),
    turnDeg: turn === null ? null : deg(turn),
    advice,
  };
}

/** Where points lie to begin with in a picture in which no leg was found: as a person lies, or sits, in the middle of it. Shares of the picture. */
const LYING = { hip: [0.6, 0.6], knee: [0.45, 0.6], ankle: [0.3, 0.6], heel: [0.3, 0.64], toe: [0.27, 0.54] } as const;
const UPRIGHT = { hip: [0.6, 0.4], knee: [0.42, 0.4], ankle: [0.42, 0.7], heel: [0.46, 0.75], toe: [0.34, 0.75] } as const;

/** A leg to be put in its place by hand. */
export function legToPlace(posture: Posture, { width, height }: PictureSize): LegDrawing {
  const shares = posture === 'lying' ? LYING : UPRIGHT;
  const at = ([x, y]: readonly [number, number]) => ({ x: px(Math.round(x * width)), y: px(Math.round(y * height)) });
  return { hip: at(shares.hip), knee: at(shares.knee), ankle: at(shares.ankle), heel: at(shares.heel), toe: at(shares.toe) };
}
