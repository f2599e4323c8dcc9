import { expect, test } from 'vitest';
import type { Grey } from '../../src/flow/grey.ts';
import { RestWatch } from '../../src/flow/rest-picture.ts';
import { segmentShape } from '../../src/flow/segment-shape.ts';
import { ms } from '../../src/units.ts';
import { landmarksOf, lying, SIZE } from '../measure/pose-builder.ts';

const picture: Grey = { ...SIZE, data: new Uint8Array(SIZE.width * SIZE.height).fill(90) };
const footAt = (ankleDeg: number, thighPx = 120) =>
  segmentShape('foot', landmarksOf(lying({ ankleDeg, thighPx, thighDeg: 45 })), 'left');

/** When the first rest picture of a foot whose points jump is taken, ms, and the length of the foot in it; null: within 4 s none was. */
function taken(watch: RestWatch, shapeAt: (frame: number) => ReturnType<typeof footAt>) {
  for (let i = 0; i <= 80; i++) {
    const rest = watch.look(picture, shapeAt(i), ms(50 * i));
    if (rest)
      return { atMs: 50 * i, lengthPx: Math.hypot(rest.shape.to.x - rest.shape.from.x, rest.shape.to.y - rest.shape.from.y) };
  }
  return null;
}
const jumping = (i: number) => footAt(i % 2 === 0 ? 0 : 20);

test('a still foot is taken after 0.3 s, held or not', () => {
  expect(taken(new RestWatch(ms(0)), () => footAt(0))?.atMs).toBe(300);
  expect(taken(new RestWatch(ms(0), true), () => footAt(0))?.atMs).toBe(300);
});

test('points that never hold still are waited for 2.5 s, those of a held leg for 0.8', () => {
  expect(taken(new RestWatch(ms(0)), jumping)?.atMs).toBe(2500);
  expect(taken(new RestWatch(ms(0), true), jumping)?.atMs).toBe(800);
});

test('a frame in which the held foot is shown half as long is not taken for its rest', () => {
  const usual = taken(new RestWatch(ms(0), true), jumping)?.lengthPx ?? Number.NaN;
  const shrunk = (i: number) => (i >= 14 && i <= 18 ? footAt(i % 2 === 0 ? 0 : 20, 60) : jumping(i));
  const found = taken(new RestWatch(ms(0), true), shrunk);
  expect(found?.atMs).toBe(950);
  expect(found?.lengthPx).toBeCloseTo(usual, 0);
});
