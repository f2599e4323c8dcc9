import type { Exercise } from '../exercises/exercise.ts';
import type { Posture } from '../pose/head-up.ts';
import { type Landmark, landmark, type Side } from '../pose/landmarks.ts';
import type { Ms } from '../units.ts';

/** The wrist must be seen with at least this visibility: the model places hidden ones by guess. Chosen. */
const SEEN = 0.5;
/** Sitting or standing: the wrist above the nose by at least this share of the trunk. Chosen: who scratches their head is under it. */
const ABOVE_NOSE = 0.1;
/**
 * Lying: the wrist above its shoulder by at least this share of the trunk (an arm is about 0.9 long), no further from it towards the feet than that, where
 * hands hold a strap, and the other hand down: two hands over the chest are none. Chosen.
 */
const ABOVE_SHOULDER = 0.45;
const TOWARDS_FEET = 0.35;
/** The same where a strap holds the leg: it is held with both hands, and one of them may be covered. Chosen: an arm that is meant stands upright or lies back. */
const TOWARDS_FEET_STRAP = 0;
/** Held for this long it is meant. Chosen: long for a reach, short for a wish. */
const HELD_MS = 800;

const SIDES: readonly Side[] = ['left', 'right'];

/** Whether a hand is raised in this pose, as somebody does who wants to say something. */
export function handRaised(landmarks: readonly Landmark[], { posture, heldLeg }: Pick<Exercise, 'posture' | 'heldLeg'>): boolean {
  const raised = SIDES.filter((side) => isUp(landmarks, side, posture, heldLeg ? TOWARDS_FEET_STRAP : TOWARDS_FEET));
  return posture === 'lying' ? raised.length === 1 : raised.length > 0;
}

function isUp(landmarks: readonly Landmark[], side: Side, posture: Posture, mostTowardsFeet: number): boolean {
  const wrist = landmark(landmarks, `${side}Wrist`);
  const shoulder = landmark(landmarks, `${side}Shoulder`);
  const hip = landmark(landmarks, `${side}Hip`);
  if (wrist.visibility < SEEN) return false;
  const trunk = Math.hypot(shoulder.x - hip.x, shoulder.y - hip.y);
  if (posture !== 'lying') return landmark(landmarks, 'nose').y - wrist.y > ABOVE_NOSE * trunk;
  const towardsFeet = Math.sign(hip.x - shoulder.x) * (wrist.x - shoulder.x);
  return shoulder.y - wrist.y > ABOVE_SHOULDER * trunk && towardsFeet < mostTowardsFeet * trunk;
}

/** Since when a hand has been up, and whether that was told. */
export interface HandState {
  readonly sinceMs: Ms | null;
  readonly told: boolean;
}

export const HAND_DOWN: HandState = { sinceMs: null, told: false };

/** Takes the next pose in. @returns the state, and whether a raise is told now: once until the hand has come down */
export function stepHand(before: HandState, tMs: Ms, raised: boolean): readonly [HandState, boolean] {
  if (!raised) return [HAND_DOWN, false];
  const sinceMs = before.sinceMs ?? tMs;
  const tells = !before.told && tMs - sinceMs >= HELD_MS;
  return [{ sinceMs, told: before.told || tells }, tells];
}
