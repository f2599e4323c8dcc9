import { bench, describe } from 'vitest';
import { findStickers } from '../../src/stickers/find-stickers.ts';
import { startStickers, stepStickers } from '../../src/stickers/follow.ts';
import { startSkinPoints, stepSkinPoints } from '../../src/stickers/skin-points.ts';
import { ms } from '../../src/units.ts';
import { draw, WALL } from '../stickers/drawn-picture.ts';
import { footDiscs, footSpots } from '../stickers/moving-foot.ts';

// Budget: following the stickers of a 640 x 480 frame within 8 ms on one core of a slow 2-core machine, looking for a lost one included.
const foot = { arch: { x: 420, y: 260 }, archToKnuckle: 110, knuckleToTip: 55, lineDeg: 178 };
const wall = { at: { x: 200, y: 150 }, radiusPx: 180, colour: WALL };
const at = (liftDeg: number, radiusPx: number, seed: number) =>
  draw({
    width: 640,
    height: 480,
    discs: [wall, ...footDiscs(footSpots(liftDeg, foot), radiusPx)],
    noise: 4,
    gradient: 0.3,
    seed,
  });

const greyOf = ({ width, height, data }: ReturnType<typeof at>) => ({
  width,
  height,
  data: Uint8Array.from(
    { length: width * height },
    (_, i) => ((data[4 * i] as number) + (data[4 * i + 1] as number) + (data[4 * i + 2] as number)) / 3,
  ),
});

for (const radiusPx of [6, 14]) {
  const first = at(0, radiusPx, 1);
  const second = at(3, radiusPx, 2);
  const found = findStickers(first);
  if (!found.ok) throw new Error(`the bench requires stickers, got ${found.error.kind}`);
  const state = startStickers(found.value, ms(0));
  const lost = { ...state, tracks: state.tracks.map((t) => (t.name === 'tip' ? { ...t, lost: true } : t)) };
  describe(`stickers of ${2 * radiusPx} px, 640 x 480`, () => {
    bench('finding three by themselves', () => {
      findStickers(first);
    });
    bench('following them into the next frame', () => {
      stepStickers(state, second, ms(33));
    });
    bench('following two and looking for the third everywhere', () => {
      stepStickers(lost, second, ms(33));
    });
  });
  const skin = startSkinPoints(
    greyOf(first),
    { tip: found.value.tip.at, knuckle: found.value.knuckle.at, arch: found.value.arch.at },
    ms(0),
  );
  if (!skin.ok) throw new Error(`the bench requires points, got ${skin.error.kind}`);
  const grey = greyOf(second);
  describe(`three points on skin, marks of ${2 * radiusPx} px`, () => {
    bench('following them into the next frame', () => {
      stepSkinPoints(skin.value, grey, ms(33));
    });
  });
}
