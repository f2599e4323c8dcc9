import fc from 'fast-check';
import type { ToeOrder } from '../../src/stickers/arrange.ts';
import type { RgbaPicture, Spot } from '../../src/stickers/rgba-picture.ts';
import { type Disc, draw, RED_SKIN, type Rgb, WALL } from './drawn-picture.ts';
import { type Foot, footDiscs, footSpots, liftAt } from './moving-foot.ts';

export const SCENE_FRAMES = 40;
export const FRAME_MS = 1000 / 30;
const SIZE = { width: 160, height: 120 };

/**
 * What passes over the foot. `finger`: of the skin's colour. `other-dot`: a dot of another vivid colour. `like-dot`: one of the sticker's colour, in the open.
 * `dot-under-finger`: one of the sticker's colour that crosses the sticker while a finger hides both.
 */
export const PASSING = ['nothing', 'finger', 'other-dot', 'like-dot', 'dot-under-finger'] as const;
export type Passing = (typeof PASSING)[number];

/** A foot whose toe lifts before a camera, and what else there is to see; angles deg, lengths px. */
export interface Scene {
  readonly passing: Passing;
  /** Of the first sticker's colour, clockwise from red, and whether all three have it. */
  readonly hue: number;
  readonly oneColour: boolean;
  readonly saturation: number;
  readonly value: number;
  readonly radiusPx: number;
  readonly foot: Foot;
  readonly peakDeg: number;
  readonly periodMs: number;
  readonly sway: Spot;
  /** Standard deviation, grey levels. */
  readonly noise: number;
  /** Shares: how much darker the right edge is, how far the light falls meanwhile. */
  readonly gradient: number;
  readonly dimming: number;
  /** Which sticker is passed over, in which direction, and by how much beside its middle. */
  readonly over: keyof ToeOrder<Spot>;
  readonly headingDeg: number;
  readonly besidePx: number;
  readonly seed: number;
}

const between = (min: number, max: number) => fc.double({ min, max, noNaN: true });

/** Any such scene. Hues keep away from skin's, which nobody's stickers should have; a camera that looks at a foot has it large enough. */
export const anyScene = (passing: fc.Arbitrary<Passing> = fc.constantFrom(...PASSING)): fc.Arbitrary<Scene> =>
  fc.record({
    passing,
    hue: between(75, 330),
    oneColour: fc.boolean(),
    saturation: between(0.7, 1),
    value: between(0.6, 0.95),
    radiusPx: between(3.2, 6),
    foot: fc.record({
      arch: fc.record({ x: between(112, 126), y: between(62, 80) }),
      archToKnuckle: between(44, 56),
      knuckleToTip: between(24, 34),
      lineDeg: between(168, 190),
    }),
    peakDeg: between(5, 60),
    periodMs: between(600, 2200),
    sway: fc.record({ x: between(0, 8), y: between(0, 5) }),
    noise: between(1, 7),
    gradient: between(0, 0.5),
    dimming: between(0, 0.4),
    over: fc.constantFrom('tip', 'knuckle', 'arch'),
    headingDeg: between(0, 360),
    besidePx: between(-3, 3),
    seed: fc.nat(99_999),
  });

const HUES = { from: 75, to: 330 };
/** The colour whose hue lies so far on among those that stickers have. */
function colourOf({ hue, saturation, value }: Scene, on: number): Rgb {
  const span = HUES.to - HUES.from;
  const turned = (HUES.from + ((hue - HUES.from + on) % span)) / 60;
  const channel = (n: number): number => {
    const k = (n + turned) % 6;
    return 255 * value * (1 - saturation * Math.max(0, Math.min(k, 4 - k, 1)));
  };
  return [channel(5), channel(3), channel(1)];
}

export const sceneSpots = ({ foot, peakDeg, periodMs, sway }: Scene, i: number): ToeOrder<Spot> => {
  const tMs = i * FRAME_MS;
  const phase = (2 * Math.PI * tMs) / 1700;
  const shift = { x: sway.x * Math.sin(phase), y: sway.y * Math.sin(1.3 * phase) };
  return footSpots(liftAt(tMs, peakDeg, periodMs), foot, shift);
};

const PASS_FRAME = 20;
const PASS_PX_A_FRAME = 5;

/** What passes, in the frame `i`: it meets the sticker in the middle of the scene. */
function passersBy(scene: Scene, i: number): readonly Disc[] {
  const { passing, over, headingDeg, besidePx, radiusPx } = scene;
  const way = PASS_PX_A_FRAME * (i - PASS_FRAME);
  const heading = (headingDeg * Math.PI) / 180;
  const met = sceneSpots(scene, PASS_FRAME)[over];
  const at = (along: number): Spot => ({
    x: met.x + along * Math.cos(heading) - besidePx * Math.sin(heading),
    y: met.y + along * Math.sin(heading) + besidePx * Math.cos(heading),
  });
  const blur = { x: (PASS_PX_A_FRAME * Math.cos(heading)) / 2, y: (PASS_PX_A_FRAME * Math.sin(heading)) / 2 };
  const index = { tip: 0, knuckle: 1, arch: 2 }[over];
  const own = colourOf(scene, scene.oneColour ? 0 : 85 * index);
  const finger: Disc = { at: at(way), radiusPx: 2.2 * radiusPx, colour: RED_SKIN, blur };
  switch (passing) {
    case 'nothing':
      return [];
    case 'finger':
      return [finger];
    case 'other-dot':
      return [{ at: at(way), radiusPx, colour: colourOf(scene, scene.oneColour ? 110 : 85 * index + 42), blur }];
    case 'like-dot':
      return [{ at: at(way), radiusPx, colour: own, blur }];
    case 'dot-under-finger':
      return [{ at: at(-way), radiusPx, colour: own, blur }, finger];
    default:
      return passing satisfies never;
  }
}

export function scenePicture(scene: Scene, i: number): RgbaPicture {
  const { radiusPx, oneColour, noise, gradient, dimming, seed } = scene;
  const [tip, knuckle, arch] = [0, 85, 170].map((on) => colourOf(scene, oneColour ? 0 : on)) as [Rgb, Rgb, Rgb];
  const stickers = footDiscs(sceneSpots(scene, i), radiusPx, { tip, knuckle, arch }, sceneSpots(scene, i - 1));
  const discs = [{ at: { x: 22, y: 24 }, radiusPx: 26, colour: WALL }, ...stickers, ...passersBy(scene, i)];
  const light = 1 - dimming * (1 - Math.cos((2 * Math.PI * i) / SCENE_FRAMES)) * 0.5;
  return draw({ ...SIZE, discs, noise, gradient, light, seed: seed + i });
}
