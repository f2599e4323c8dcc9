import { describe, expect, test } from 'vitest';
import { uniformFrom } from '../../src/flow/prng.ts';
import type { ToeOrder } from '../../src/stickers/arrange.ts';
import { findStickers } from '../../src/stickers/find-stickers.ts';
import { BRIDGE_MS, type StickersState, startStickers, stepStickers } from '../../src/stickers/follow.ts';
import { distance, type RgbaPicture, type Spot } from '../../src/stickers/rgba-picture.ts';
import { TOE_STICKERS } from '../../src/stickers/sticker-name.ts';
import { ms } from '../../src/units.ts';
import { BLUE, type Disc, DULL_GREEN, draw, GREEN, PINK, RED_SKIN, type Rgb, SKIN, WALL, YELLOW } from './drawn-picture.ts';
import { FOOT, footDiscs, footSpots, liftAt } from './moving-foot.ts';

const WIDTH = 160;
const HEIGHT = 120;
const FRAME_MS = 1000 / 30;
const ONE_GREEN: ToeOrder<Rgb> = { tip: GREEN, knuckle: GREEN, arch: GREEN };
const THREE: ToeOrder<Rgb> = { tip: YELLOW, knuckle: BLUE, arch: PINK };
const ONE_PINK: ToeOrder<Rgb> = { tip: PINK, knuckle: PINK, arch: PINK };

function started(picture: RgbaPicture): StickersState {
  const found = findStickers(picture);
  if (!found.ok) throw new Error(`the test requires stickers, got ${JSON.stringify(found.error)}`);
  return startStickers(found.value, ms(0));
}

const still = (discs: readonly Disc[], more: { readonly noise?: number; readonly light?: number; readonly seed?: number } = {}) =>
  draw({ width: WIDTH, height: HEIGHT, discs, noise: 2, ...more });

describe('ten thousand frames of toes that lift', () => {
  const LENGTH = 100;
  const SEQUENCES = 10;

  // Ten runs of a thousand, so that a busy machine has time for each.
  test.each(Array.from({ length: 10 }, (_, run) => run))(
    'no sticker takes the place of another, and centres are within 0.3 px: %i',
    (run) => {
      let frames = 0;
      let swaps = 0;
      let lost = 0;
      let squares = 0;
      let seen = 0;
      for (let s = SEQUENCES * run; s < SEQUENCES * (run + 1); s++) {
        const random = uniformFrom(s + 1);
        const radiusPx = 3 + 2.5 * random();
        const peakDeg = 8 + 50 * random();
        const periodMs = 600 + 1400 * random();
        const colours = [ONE_GREEN, THREE, ONE_PINK][s % 3] as ToeOrder<Rgb>;
        const sway = { x: 6 * random(), y: 4 * random() };
        const noise = 1 + 5 * random();
        const gradient = 0.5 * random();
        const drift = 0.5 * random();
        // Something of a like hue lies beside the foot, something skin-coloured below it, and the ground behind the toe's tip is a wall.
        const around: readonly Disc[] = [
          { at: { x: 30, y: 20 + 60 * random() }, radiusPx: 34, colour: WALL },
          { at: { x: 20 + 100 * random(), y: 104 }, radiusPx: 8, colour: DULL_GREEN },
          { at: { x: 20 + 100 * random(), y: 12 }, radiusPx: 6, colour: RED_SKIN },
        ];
        const at = (tMs: number) => {
          const phase = (2 * Math.PI * tMs) / 1700;
          return footSpots(liftAt(tMs, peakDeg, periodMs), FOOT, {
            x: sway.x * Math.sin(phase),
            y: sway.y * Math.sin(1.3 * phase),
          });
        };
        const picture = (i: number): RgbaPicture => {
          const spots = at(i * FRAME_MS);
          const before = at((i - 1) * FRAME_MS);
          const discs = [...around, ...footDiscs(spots, radiusPx, colours, before)];
          const light = 1 - drift * (1 - Math.cos((2 * Math.PI * i) / LENGTH));
          return draw({ width: WIDTH, height: HEIGHT, discs, noise, gradient, light: Math.max(0.4, light), seed: 1000 * s + i });
        };
        let state = started(picture(0));
        for (let i = 1; i <= LENGTH; i++) {
          const step = stepStickers(state, picture(i), ms(i * FRAME_MS));
          state = step.state;
          frames++;
          const truth = at(i * FRAME_MS);
          for (const name of TOE_STICKERS) {
            const sticker = step.stickers[name];
            if (!sticker) {
              lost++;
              continue;
            }
            const off = TOE_STICKERS.map((other) => distance(truth[other], sticker.at));
            if (Math.min(...off) < distance(truth[name], sticker.at)) swaps++;
            if (sticker.how !== 'seen') continue;
            seen++;
            squares += distance(truth[name], sticker.at) ** 2;
          }
        }
      }
      expect(frames).toBe(1000);
      expect(swaps).toBe(0);
      expect(lost).toBe(0);
      expect(seen).toBeGreaterThan(0.99 * 3 * frames);
      expect(Math.sqrt(squares / seen)).toBeLessThan(0.3);
    },
  );
});

describe('a hidden sticker', () => {
  const spots = footSpots(0);
  const shown = (names: readonly (keyof ToeOrder<Spot>)[], more: readonly Disc[] = []) => {
    const discs = footDiscs(spots, 5).filter((_, i) => names.includes(TOE_STICKERS[i] as keyof ToeOrder<Spot>));
    return still([...discs, ...more]);
  };

  test('is bridged for a moment, said to be, then lost, and taken up again when it shows', () => {
    let state = started(shown(TOE_STICKERS));
    let tMs = 0;
    const next = (picture: RgbaPicture) => {
      tMs += FRAME_MS;
      const step = stepStickers(state, picture, ms(tMs));
      state = step.state;
      return step;
    };
    for (let i = 0; i < 5; i++) next(shown(TOE_STICKERS));
    const short = next(shown(['tip', 'arch']));
    expect(short.stickers.knuckle?.how).toBe('bridged');
    expect(distance(short.stickers.knuckle?.at as Spot, spots.knuckle)).toBeLessThan(0.5);
    expect(short.stickers.knuckle?.errorPx).toBeGreaterThan(short.stickers.tip?.errorPx as number);
    for (let t = 0; t <= BRIDGE_MS; t += FRAME_MS) next(shown(['tip', 'arch']));
    const long = next(shown(['tip', 'arch']));
    expect(long.stickers.knuckle).toBeNull();
    expect(long.troubles).toEqual([{ kind: 'lost', name: 'knuckle' }]);
    expect(long.stickers.tip?.how).toBe('seen');
    const back = next(shown(TOE_STICKERS));
    expect(back.troubles).toEqual([]);
    expect(distance(back.stickers.knuckle?.at as Spot, spots.knuckle)).toBeLessThan(0.3);
  });

  test('is not replaced by another thing of its colour elsewhere', () => {
    let state = started(shown(TOE_STICKERS));
    const elsewhere: Disc = { at: { x: 30, y: 20 }, radiusPx: 5, colour: GREEN };
    for (let i = 1; i < 30; i++) {
      const step = stepStickers(state, shown(['tip', 'arch'], [elsewhere]), ms(i * FRAME_MS));
      state = step.state;
      const knuckle = step.stickers.knuckle;
      if (knuckle) expect(distance(knuckle.at, spots.knuckle)).toBeLessThan(3);
    }
    expect(state.tracks.find((t) => t.name === 'knuckle')?.lost).toBe(true);
  });

  test('half covered is not measured by the half that shows', () => {
    let state = started(shown(TOE_STICKERS));
    const finger: Disc = { at: { x: spots.tip.x - 9, y: spots.tip.y }, radiusPx: 9, colour: SKIN };
    for (let i = 1; i < 6; i++) {
      const step = stepStickers(state, shown(TOE_STICKERS, [finger]), ms(i * FRAME_MS));
      state = step.state;
      expect(step.stickers.tip?.how).toBe('bridged');
      expect(distance(step.stickers.tip?.at as Spot, spots.tip)).toBeLessThan(1);
    }
  });

  test('all three gone give three nulls and no place', () => {
    let state = started(shown(TOE_STICKERS));
    for (let i = 1; i < 20; i++) state = stepStickers(state, shown([]), ms(i * FRAME_MS)).state;
    const step = stepStickers(state, shown([]), ms(20 * FRAME_MS));
    expect(step.stickers).toEqual({ tip: null, knuckle: null, arch: null });
    const again = stepStickers(step.state, shown(TOE_STICKERS), ms(21 * FRAME_MS));
    for (const name of TOE_STICKERS) expect(distance(again.stickers[name]?.at as Spot, spots[name])).toBeLessThan(0.3);
  });
});

describe('paths that cross', () => {
  test.each([
    ['one colour', ONE_GREEN],
    ['three colours', THREE],
  ] as const)('keep their names: %s', (_, colours) => {
    // The tip swings down past the knuckle's other side, through the arch's path: no toe does, a picture turned by hand may.
    const at = (i: number): ToeOrder<Spot> => ({
      tip: { x: 40 + 1.5 * i, y: 40 + 0.1 * i },
      knuckle: { x: 80, y: 40 + 0.05 * i },
      arch: { x: 130, y: 70 },
    });
    let state = startStickers(
      named(draw({ width: WIDTH, height: HEIGHT, discs: footDiscs(at(0), 4, colours), noise: 2 })),
      ms(0),
    );
    for (let i = 1; i <= 45; i++) {
      const picture = draw({ width: WIDTH, height: HEIGHT, discs: footDiscs(at(i), 4, colours), noise: 2, seed: i });
      state = stepStickers(state, picture, ms(i * FRAME_MS)).state;
    }
    for (const track of state.tracks) expect(distance(track.at, at(45)[track.name as keyof ToeOrder<Spot>])).toBeLessThan(0.5);
  });

  const named = (picture: RgbaPicture) => {
    const found = findStickers(picture);
    if (!found.ok) throw new Error(`the test requires stickers, got ${JSON.stringify(found.error)}`);
    return found.value;
  };
});

describe('light', () => {
  test('that turns warm and dims slowly is followed, and never onto skin', () => {
    const spots = footSpots(0);
    const warm = (share: number): ToeOrder<Rgb> => {
      const tint = ([r, g, b]: Rgb): Rgb => [Math.min(255, r * (1 + 0.25 * share)), g, b * (1 - 0.3 * share)];
      return { tip: tint(GREEN), knuckle: tint(GREEN), arch: tint(GREEN) };
    };
    let state = started(still(footDiscs(spots, 5)));
    for (let i = 1; i <= 200; i++) {
      const step = stepStickers(
        state,
        still(footDiscs(spots, 5, warm(i / 200)), { light: 1 - 0.5 * (i / 200), seed: i }),
        ms(i * FRAME_MS),
      );
      state = step.state;
      for (const name of TOE_STICKERS) expect(step.stickers[name]?.how).toBe('seen');
    }
    for (let i = 201; i <= 400; i++) state = stepStickers(state, still([], { seed: i }), ms(i * FRAME_MS)).state;
    expect(state.tracks.map((t) => t.lost)).toEqual([true, true, true]);
  });

  test('that changes at once by a factor changes no place', () => {
    const spots = footSpots(10);
    const state = started(still(footDiscs(spots, 5)));
    const step = stepStickers(state, still(footDiscs(spots, 5), { light: 0.6 }), ms(FRAME_MS));
    for (const name of TOE_STICKERS) expect(distance(step.stickers[name]?.at as Spot, spots[name])).toBeLessThan(0.3);
  });
});

describe('what cannot be', () => {
  test('a segment that is suddenly far shorter is said to be implausible', () => {
    let state = started(still(footDiscs(footSpots(0), 4)));
    const near = footSpots(0, { ...FOOT, archToKnuckle: 36 });
    let step = stepStickers(state, still(footDiscs(footSpots(0, { ...FOOT, archToKnuckle: 43 }), 4)), ms(FRAME_MS));
    expect(step.troubles).toEqual([]);
    state = step.state;
    step = stepStickers(state, still(footDiscs(near, 4)), ms(2 * FRAME_MS));
    expect(step.troubles).toMatchObject([{ kind: 'implausible', between: ['knuckle', 'arch'] }]);
  });

  test('time that does not go on is a mistake of the caller', () => {
    const picture = still(footDiscs(footSpots(0), 4));
    expect(() => stepStickers(started(picture), picture, ms(0))).toThrow('stepStickers requires a later time than 0, got 0');
  });

  test('a state is not changed by a step', () => {
    const state = started(still(footDiscs(footSpots(0), 4)));
    const before = structuredClone(state);
    stepStickers(state, still(footDiscs(footSpots(12), 4)), ms(FRAME_MS));
    expect(state).toEqual(before);
  });
});

test('more stickers than three are followed beside them', () => {
  const spots = footSpots(0);
  const extra: Disc = { at: { x: 60, y: 40 }, radiusPx: 4, colour: BLUE };
  const picture = still([...footDiscs(spots, 5), extra]);
  const state = startStickers(
    {
      ...Object.fromEntries(
        started(picture).tracks.map((t) => [t.name, { at: t.at, diameterPx: t.diameterPx, roundness: 1, pair: t.pair }]),
      ),
      'toe-2': {
        at: extra.at,
        diameterPx: 8,
        roundness: 1,
        pair: { sticker: { redGreen: -0.3, yellowBlue: -0.93 }, surround: { redGreen: 0.19, yellowBlue: 0.23 } },
      },
    },
    ms(0),
  );
  const moved = { ...extra, at: { x: 60, y: 36 } };
  const step = stepStickers(state, still([...footDiscs(spots, 5), moved]), ms(FRAME_MS));
  expect(distance(step.stickers['toe-2']?.at as Spot, moved.at)).toBeLessThan(0.3);
});
