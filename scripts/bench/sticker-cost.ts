import { findStickers } from '../../src/stickers/find-stickers.ts';
import { startStickers, stepStickers } from '../../src/stickers/follow.ts';
import type { RgbaPicture } from '../../src/stickers/rgba-picture.ts';
import { startSkinPoints, stepSkinPoints } from '../../src/stickers/skin-points.ts';
import { ms } from '../../src/units.ts';

/** What one 640 x 480 frame costs, ms a run, one of each in every turn. */
interface StickerCost {
  /** The baseline: every pixel of the frame is read once and its two chroma values summed, as the plainest search would begin. */
  readonly onePass: readonly number[];
  /** Three stickers followed into the next frame. */
  readonly follow: readonly number[];
  /** Two followed, the third looked for everywhere. */
  readonly regain: readonly number[];
  /** The whole search, for set-up and after all are lost. */
  readonly search: readonly number[];
  /** Three points on skin followed. */
  readonly skin: readonly number[];
}

const WIDTH = 640;
const HEIGHT = 480;
const TURNS = 60;
/** Turns that only warm up. */
const WARM_UP = 15;
const FRAME_MS = 33;
const SKIN = [205, 160, 130] as const;
const WALL = [150, 150, 158] as const;
const GREEN = [30, 190, 80] as const;
const RADIUS_PX = 9;
/** Tip, knuckle and arch, px. */
const DOTS = [
  [255, 235],
  [310, 245],
  [420, 255],
] as const;

/** A foot of plain skin with three dots; grey levels scatter by a fixed pattern of noise. @param dx all dots moved, px */
function drawn(dx: number, seed: number): RgbaPicture {
  const data = new Uint8ClampedArray(4 * WIDTH * HEIGHT);
  let state = seed;
  for (let i = 0; i < WIDTH * HEIGHT; i++) {
    const x = i % WIDTH;
    const y = Math.floor(i / WIDTH);
    const isDot = DOTS.some(([u, v]) => Math.hypot(x - u - dx, y - v) <= RADIUS_PX);
    const isFoot = x > 220 && x < 480 && y > 200 && y < 300;
    const colour = isDot ? GREEN : isFoot ? SKIN : WALL;
    state = (Math.imul(state, 1664525) + 1013904223) >>> 0;
    const noise = 8 * (state / 2 ** 32 - 0.5);
    for (let c = 0; c < 3; c++) data[4 * i + c] = (colour[c] as number) + noise;
    data[4 * i + 3] = 255;
  }
  return { width: WIDTH, height: HEIGHT, data };
}

const greyOf = ({ width, height, data }: RgbaPicture) => ({
  width,
  height,
  data: Uint8Array.from({ length: width * height }, (_, i) => data[4 * i + 1] as number),
});

/** Blue and red difference of ITU-R BT.601, summed so that nothing is left out. */
function onePass({ data }: RgbaPicture): number {
  let sum = 0;
  for (let p = 0; p < data.length; p += 4) {
    const [r, g, b] = [data[p] as number, data[p + 1] as number, data[p + 2] as number];
    sum += Math.abs(-0.169 * r - 0.331 * g + 0.5 * b) + Math.abs(0.5 * r - 0.419 * g - 0.081 * b);
  }
  return sum;
}

const timed = (work: () => unknown): number => {
  const from = performance.now();
  work();
  return performance.now() - from;
};

/** Times following and finding against one plain pass over the same frame, turn by turn in this Node. */
export function stickerCost(): StickerCost {
  const [first, second] = [drawn(0, 1), drawn(2, 2)];
  const found = findStickers(first);
  if (!found.ok) throw new Error(`stickerCost requires stickers in its picture, got ${found.error.kind}`);
  const { tip, knuckle, arch } = found.value;
  const state = startStickers(found.value, ms(0));
  const lost = { ...state, tracks: state.tracks.map((t) => (t.name === 'tip' ? { ...t, lost: true } : t)) };
  const skin = startSkinPoints(greyOf(first), { tip: tip.at, knuckle: knuckle.at, arch: arch.at }, ms(0));
  if (!skin.ok) throw new Error(`stickerCost requires points in its picture, got ${skin.error.kind}`);
  const grey = greyOf(second);
  const works = {
    onePass: () => onePass(second),
    follow: () => stepStickers(state, second, ms(FRAME_MS)),
    regain: () => stepStickers(lost, second, ms(FRAME_MS)),
    search: () => findStickers(second),
    skin: () => stepSkinPoints(skin.value, grey, ms(FRAME_MS)),
  };
  const times = { onePass: [], follow: [], regain: [], search: [], skin: [] } as Record<keyof StickerCost, number[]>;
  for (let turn = 0; turn < WARM_UP + TURNS; turn++) {
    for (const name of Object.keys(works) as (keyof StickerCost)[]) {
      const took = timed(works[name]);
      if (turn >= WARM_UP) times[name].push(took);
    }
  }
  return times;
}
