import { expect, test } from 'vitest';
import { cameraTurn } from '../../src/measure/camera-turn.ts';
import { sampleOf } from '../../src/measure/leg-sample.ts';
import { slopeOfTurn } from '../../src/measure/lying-turn.ts';
import { LANDMARK, type Landmark } from '../../src/pose/landmarks.ts';
import { deg, ms, px } from '../../src/units.ts';
import { landmarksOf, lying } from './pose-builder.ts';

/** A lying body whose far shoulder and hip the model sees further towards the feet by these shares of the line from shoulder to ankle. */
function seen(over: Parameters<typeof lying>[0], shoulder: number, hip: number) {
  const body = lying(over);
  const towardsFeet = (body.facing === 'right' ? 1 : -1) * (1.2 + 1 + 0.95) * body.thighPx;
  const far = body.side === 'left' ? 'right' : 'left';
  const landmarks = landmarksOf(body).map((p, i): Landmark => {
    if (i === LANDMARK[`${far}Shoulder`]) return { ...p, x: px(p.x + shoulder * towardsFeet) };
    return i === LANDMARK[`${far}Hip`] ? { ...p, x: px(p.x + hip * towardsFeet) } : p;
  });
  return sampleOf({ tMs: ms(0), landmarks, motion: null, brightness: 100, camera: null }, body.side);
}

test('a person lying exactly side-on shows no turn, whichever way they lie and however near', () => {
  for (const facing of ['left', 'right'] as const) {
    for (const side of ['left', 'right'] as const) {
      for (const thighPx of [60, 120]) expect(cameraTurn([seen({ facing, side, thighPx }, 0, 0)], 'lying')).toBeCloseTo(0, 6);
    }
  }
});

test('the far side nearer to the feet is a camera turned towards the feet, nearer to the head one towards the head', () => {
  expect(cameraTurn([seen({}, 0.016, 0.0125)], 'lying')).toBeCloseTo(10, 6);
  expect(cameraTurn([seen({ facing: 'right' }, -0.016, -0.0125)], 'lying')).toBeCloseTo(-10, 6);
});

test('one frame gone astray among many does not matter; without landmarks there is no turn', () => {
  expect(cameraTurn([seen({}, 0.016, 0.0125), seen({}, 0.016, 0.0125), seen({}, 0.9, 0.9)], 'lying')).toBeCloseTo(10, 6);
  expect(
    cameraTurn([sampleOf({ tMs: ms(0), landmarks: null, motion: null, brightness: null, camera: null }, 'left')], 'lying'),
  ).toBeNull();
});

test('a camera turned towards the feet shows a level leg falling towards them, by about a third of its turn', () => {
  expect(slopeOfTurn(deg(0))).toBeCloseTo(0, 9);
  expect(slopeOfTurn(deg(12))).toBeCloseTo(-3.65, 2);
  expect(slopeOfTurn(deg(-12))).toBeCloseTo(3.65, 2);
});
