import { expect, test } from 'vitest';
import { footView } from '../../src/measure/foot-view.ts';
import { sampleOf } from '../../src/measure/leg-sample.ts';
import { deg } from '../../src/units.ts';
import { type BodyPose, lying, mirrored, recording, SIZE } from './pose-builder.ts';

const seen = (over: Partial<BodyPose>) => recording({ lastsMs: 500, bodyAt: () => lying(over), flow: false });
const samples = (over: Partial<BodyPose>) => seen(over).map((each) => sampleOf(each, 'left'));
const ankleX = (over: Partial<BodyPose>) => samples(over)[0]?.points?.ankle.x ?? Number.NaN;
/** A body whose ankle lies so many px from the picture's middle towards the feet. */
const at = (px: number) => ({ shiftX: SIZE.width / 2 - px - ankleX({}) });

test('a foot in the picture\u2019s middle is seen from the side, one at its edge from the head\u2019s side', () => {
  expect(footView(samples(at(0)), SIZE, 'left', deg(0))).toBeCloseTo(0, 1);
  // 160 px at a focal length of 480.
  expect(footView(samples(at(160)), SIZE, 'left', null)).toBeCloseTo(18.4, 1);
});

test('a camera turned towards the head adds to it, one turned towards the feet takes away', () => {
  expect(footView(samples(at(160)), SIZE, 'left', deg(-10))).toBeCloseTo(28.4, 1);
  expect(footView(samples(at(160)), SIZE, 'left', deg(10))).toBeCloseTo(8.4, 1);
  expect(footView(samples(at(160)), SIZE, 'left', deg(-29))).toBe(35);
});

test('a mirrored picture tells the same', () => {
  const other = seen(at(160)).map((each) => sampleOf(mirrored(each), 'right'));
  expect(footView(other, SIZE, 'right', deg(-10))).toBeCloseTo(28.4, 1);
});

test('nobody seen has no view', () => {
  expect(footView([], SIZE, 'left', deg(0))).toBeNull();
});
