import { expect, test } from 'vitest';
import { footTap } from '../../src/exercises/foot-tap.ts';
import { legRaise } from '../../src/exercises/leg-raise.ts';
import type { Observation } from '../../src/measure/observation.ts';
import { viewAdvice } from '../../src/measure/view-advice.ts';
import { LANDMARK, type Landmark } from '../../src/pose/landmarks.ts';
import { ms, px, ratio } from '../../src/units.ts';
import { type BodyPose, landmarksOf, lying, SIZE, sitting, standing } from './pose-builder.ts';

const shown = (landmarks: readonly Landmark[] | null, brightness: number | null = 120): Observation => ({
  tMs: ms(0),
  landmarks,
  motion: null,
  camera: null,
  brightness,
});
const advice = (body: BodyPose, exercise = footTap) => viewAdvice(shown(landmarksOf(body)), exercise, body.side, SIZE);
/** The body with some of its points changed. */
const changed = (body: BodyPose, change: (p: Landmark, i: number) => Partial<Landmark>) =>
  viewAdvice(shown(landmarksOf(body).map((p, i) => ({ ...p, ...change(p, i) }))), footTap, body.side, SIZE);

test('a good view needs no advice', () => {
  expect(advice(sitting())).toEqual([]);
  expect(advice(sitting({ facing: 'right', side: 'right' }))).toEqual([]);
  expect(advice(lying(), legRaise)).toEqual([]);
});

test('nobody there', () => {
  expect(viewAdvice(shown(null), footTap, 'left', SIZE)).toEqual(['nobody']);
});

test('too dark is said first, and not guessed when the brightness is unknown', () => {
  expect(viewAdvice(shown(landmarksOf(sitting()), 10), footTap, 'left', SIZE)).toEqual(['too-dark']);
  expect(viewAdvice(shown(null, 10), footTap, 'left', SIZE)).toEqual(['too-dark', 'nobody']);
  expect(viewAdvice(shown(landmarksOf(sitting()), null), footTap, 'left', SIZE)).toEqual([]);
});

test('so near that the leg leaves the picture', () => {
  expect(advice(sitting({ thighPx: 300 }))).toContain('too-near');
});

test('so far that the foot is a few pixels', () => {
  expect(advice(sitting({ thighPx: 40 }))).toContain('too-far');
});

test('a foot outside the picture is a hidden leg', () => {
  expect(advice(sitting({ shiftY: 130 }))).toContain('leg-hidden');
});

test('a leg the model does not see is hidden', () => {
  expect(changed(sitting(), (_, i) => (i === LANDMARK.leftAnkle ? { visibility: ratio(0.1) } : {}))).toContain('leg-hidden');
});

test('someone who faces the camera is not side-on', () => {
  const apart = (p: Landmark, i: number): Partial<Landmark> =>
    i === LANDMARK.rightShoulder || i === LANDMARK.rightHip ? { x: px(p.x - 100) } : {};
  expect(changed(sitting(), apart)).toContain('not-side-on');
});

test('the other leg in front is the wrong leg', () => {
  expect(changed(sitting(), (p) => ({ z: px(-3 * p.z) }))).toContain('wrong-leg');
});

test('someone who stands or lies is asked to sit, someone who stands or sits to lie', () => {
  expect(advice(standing())).toEqual(['not-sitting']);
  expect(advice(lying())).toEqual(['not-sitting']);
  expect(advice(sitting(), legRaise)).toEqual(['not-lying']);
  expect(advice(standing(), legRaise)).toEqual(['not-lying']);
});
