import { describe, expect, test } from 'vitest';
import { footTap } from '../../src/exercises/foot-tap.ts';
import { HAND_DOWN, handRaised, stepHand } from '../../src/measure/raised-hand.ts';
import { LANDMARK, type Landmark, type LandmarkName } from '../../src/pose/landmarks.ts';
import { ms, px, ratio } from '../../src/units.ts';
import { landmarksOf, lying, recording, sitting, specOf, standing } from './pose-builder.ts';
import { runSet } from './set-runner.ts';

/** The pose with points moved by so many px from where another one is: x, up positive. */
function moved(
  landmarks: readonly Landmark[],
  ...moves: readonly (readonly [point: LandmarkName, from: LandmarkName, x: number, up: number])[]
): readonly Landmark[] {
  return moves.reduce<readonly Landmark[]>((all, [point, from, x, up]) => {
    const base = landmarks[LANDMARK[from]] as Landmark;
    return all.map((p, i) => (i === LANDMARK[point] ? { ...p, x: px(base.x + x), y: px(base.y - up) } : p));
  }, landmarks);
}
/** Trunks of the built bodies are 144 px long. */
const TRUNK_PX = 144;
const sat = landmarksOf(sitting());
const lay = landmarksOf(lying());

describe('a hand is raised', () => {
  test.each([
    ['sitting, the hand over the head', moved(sat, ['leftWrist', 'nose', 20, 40]), 'upright'],
    ['standing, the far hand', moved(landmarksOf(standing()), ['rightWrist', 'nose', -10, 30]), 'standing'],
    ['lying, one arm straight up', moved(lay, ['leftWrist', 'leftShoulder', 10, 0.85 * TRUNK_PX]), 'lying'],
    ['lying, one arm up and back over the head', moved(lay, ['leftWrist', 'leftShoulder', 76, 0.5 * TRUNK_PX]), 'lying'],
  ] as const)('%s', (_, landmarks, posture) => expect(handRaised(landmarks, { posture })).toBe(true));
});

describe('no hand is raised', () => {
  test.each([
    ['hands at rest, sitting', sat, 'upright'],
    ['hands at rest, standing', landmarksOf(standing()), 'standing'],
    ['hands at rest, lying', lay, 'lying'],
    ['a hand at the face', moved(sat, ['leftWrist', 'nose', 10, -5]), 'upright'],
    [
      'both hands on a strap over the chest',
      moved(lay, ['leftWrist', 'leftShoulder', 20, 100], ['rightWrist', 'rightShoulder', 20, 100]),
      'lying',
    ],
    ['one hand reaching far toward the knee', moved(lay, ['leftWrist', 'leftShoulder', -90, 80]), 'lying'],
    [
      'a wrist that the model only guesses',
      moved(sat, ['leftWrist', 'nose', 0, 60]).map((p) => ({ ...p, visibility: ratio(0.3) })),
      'upright',
    ],
  ] as const)('%s', (_, landmarks, posture) => expect(handRaised(landmarks, { posture })).toBe(false));
});

test('it is told once it was held for 0.8 s, and again only after it came down', () => {
  let state = HAND_DOWN;
  const told: number[] = [];
  for (let t = 0; t <= 6000; t += 100) {
    const up = (t >= 1000 && t < 1500) || (t >= 2000 && t < 4000) || t >= 4500;
    const [next, tells] = stepHand(state, ms(t), up);
    state = next;
    if (tells) told.push(t);
  }
  expect(told).toEqual([2800, 5300]);
});

test('in a set it is heard while it counts, not while the person takes their place', () => {
  const raised = (from: number, to: number) =>
    recording({ lastsMs: 6000, bodyAt: () => sitting() }).map((o) =>
      o.landmarks && o.tMs >= from && o.tMs < to ? { ...o, landmarks: moved(o.landmarks, ['leftWrist', 'nose', 0, 50]) } : o,
    );
  const heard = (from: number, to: number) =>
    runSet(specOf(footTap), raised(from, to)).events.filter(({ kind }) => kind === 'hand').length;
  expect(heard(2000, 4000)).toBe(1);
  expect(heard(2000, 2600)).toBe(0);
  expect(heard(0, 500)).toBe(0);
});
