import { describe, expect, test } from 'vitest';
import type { ToeOrder } from '../../src/stickers/arrange.ts';
import { findStickers } from '../../src/stickers/find-stickers.ts';
import { learnColour } from '../../src/stickers/learn-colour.ts';
import { distance, type Spot } from '../../src/stickers/rgba-picture.ts';
import { MIN_CONTRAST, MIN_DIAMETER_PX } from '../../src/stickers/sticker-at.ts';
import { TOE_STICKERS } from '../../src/stickers/sticker-name.ts';
import { BLUE, type Disc, DULL_GREEN, draw, GREEN, PINK, type Rgb, type Scene, WALL, YELLOW } from './drawn-picture.ts';
import { FOOT, footDiscs, footSpots } from './moving-foot.ts';

const RED: Rgb = [225, 60, 45];
const spots = footSpots(6, { ...FOOT, arch: { x: 220, y: 120 }, archToKnuckle: 80, knuckleToTip: 40 });
const picture = (discs: readonly Disc[], more: Partial<Scene> = {}) =>
  draw({ width: 320, height: 240, discs, noise: 3, ...more });
const of = (colour: Rgb): ToeOrder<Rgb> => ({ tip: colour, knuckle: colour, arch: colour });
const foot = (colours: ToeOrder<Rgb>, radiusPx = 6) => footDiscs(spots, radiusPx, colours);
/** Where the tip is drawn before a wall and not before skin. */
const wall: Disc = { at: { x: spots.tip.x - 45, y: spots.tip.y }, radiusPx: 45, colour: WALL };

describe('three stickers are found by themselves', () => {
  test.each<[string, ToeOrder<Rgb>]>([
    ['green', of(GREEN)],
    ['pink', of(PINK)],
    ['blue', of(BLUE)],
    ['yellow', of(YELLOW)],
    ['red, near skin', of(RED)],
    ['of three colours', { tip: PINK, knuckle: YELLOW, arch: BLUE }],
  ])('%s', (_, colours) => {
    for (const light of [1, 0.5]) {
      const found = findStickers(picture([wall, ...foot(colours)], { light, gradient: 0.4 }));
      if (!found.ok) throw new Error(`the test requires stickers, got ${JSON.stringify(found.error)}`);
      for (const name of TOE_STICKERS) {
        expect(distance(found.value[name].at, spots[name])).toBeLessThan(0.3);
        expect(Math.abs(found.value[name].diameterPx - 12)).toBeLessThan(1.5);
      }
    }
  });

  test('beside things of other shapes and duller colours', () => {
    const clutter: readonly Disc[] = [
      { at: { x: 40, y: 200 }, radiusPx: 30, colour: DULL_GREEN },
      { at: { x: 280, y: 30 }, radiusPx: 4, colour: [170, 140, 130], blur: { x: 40, y: 0 } },
    ];
    expect(findStickers(picture([...clutter, ...foot(of(GREEN))])).ok).toBe(true);
  });
});

describe('refused, with the reason', () => {
  const reason = (discs: readonly Disc[], more: Partial<Scene> = {}) => {
    const found = findStickers(picture(discs, more));
    return found.ok ? null : found.error.kind;
  };

  test('a bare foot', () => {
    expect(reason([])).toBe('too-few');
  });
  test('two stickers', () => {
    expect(reason(foot(of(GREEN)).slice(0, 2))).toBe('too-few');
  });
  test("a room of the stickers' colour", () => {
    expect(reason([{ at: { x: 60, y: 210 }, radiusPx: 45, colour: GREEN }, ...foot(of(GREEN))])).toBe('like-surround');
  });
  test('more dots of the colour than three, placed so that any might be meant', () => {
    const more: readonly Disc[] = [
      { at: { x: 100, y: 200 }, radiusPx: 6, colour: GREEN },
      { at: { x: 150, y: 200 }, radiusPx: 6, colour: GREEN },
      { at: { x: 230, y: 202 }, radiusPx: 6, colour: GREEN },
    ];
    const found = findStickers(picture([...more, ...foot(of(GREEN))]));
    expect(found).toMatchObject({ ok: false, error: { kind: 'room-same-colour', count: 6 } });
  });
});

describe('a tap', () => {
  const tapAt = (at: Spot, discs: readonly Disc[], more: Partial<Scene> = {}) => learnColour(picture(discs, more), at);

  test('on or just beside a sticker learns it', () => {
    for (const name of TOE_STICKERS) {
      const learnt = tapAt({ x: spots[name].x + 9, y: spots[name].y - 7 }, foot(of(GREEN)));
      if (!learnt.ok) throw new Error(`the test requires a sticker, got ${JSON.stringify(learnt.error)}`);
      expect(distance(learnt.value.at, spots[name])).toBeLessThan(0.3);
    }
  });
  test('on skin learns nothing', () => {
    expect(tapAt({ x: 40, y: 40 }, foot(of(GREEN)))).toMatchObject({ ok: false, error: { kind: 'like-surround' } });
  });
  test('on a dot hardly redder than skin learns nothing', () => {
    const dot: Disc = { at: { x: 80, y: 80 }, radiusPx: 6, colour: [206, 142, 116] };
    expect(tapAt(dot.at, [dot])).toMatchObject({ ok: false, error: { kind: 'like-surround', neededContrast: MIN_CONTRAST } });
  });
  test('on a sticker of a few pixels is told so', () => {
    const dot: Disc = { at: { x: 80.4, y: 80.3 }, radiusPx: 1.6, colour: GREEN };
    expect(tapAt(dot.at, [dot])).toMatchObject({ ok: false, error: { kind: 'too-small', neededPx: MIN_DIAMETER_PX } });
  });
  test('on a sticker under a highlight is told so', () => {
    const dot: Disc = { at: { x: 80, y: 80 }, radiusPx: 8, colour: GREEN };
    const shine: Disc = { at: { x: 80, y: 80 }, radiusPx: 5.5, colour: [255, 255, 255] };
    expect(tapAt({ x: 86.8, y: 80 }, [dot, shine])).toMatchObject({ ok: false, error: { kind: 'glare' } });
  });
  test('a small highlight moves no centre', () => {
    const dot: Disc = { at: { x: 80, y: 80 }, radiusPx: 8, colour: GREEN };
    const shine: Disc = { at: { x: 78, y: 77 }, radiusPx: 2.2, colour: [255, 255, 255] };
    const learnt = tapAt({ x: 82, y: 82 }, [dot, shine]);
    if (!learnt.ok) throw new Error(`the test requires a sticker, got ${JSON.stringify(learnt.error)}`);
    expect(distance(learnt.value.at, dot.at)).toBeLessThan(0.3);
  });
  test('beside a wall of that colour is told so', () => {
    const same: Disc = { at: { x: 40, y: 200 }, radiusPx: 45, colour: PINK };
    expect(tapAt(spots.arch, [same, ...foot(of(PINK))])).toMatchObject({ ok: false, error: { kind: 'like-surround' } });
  });
});

test.each([5, 7, 12, 30])('a centre is found within 0.1 px in noise, %i px across', (diameterPx) => {
  let squares = 0;
  const runs = 40;
  for (let i = 0; i < runs; i++) {
    const at = { x: 50 + ((i * 7) % 10) / 10, y: 50 + ((i * 3) % 10) / 10 };
    const dot: Disc = { at, radiusPx: diameterPx / 2, colour: i % 2 ? GREEN : PINK };
    const found = learnColour(draw({ width: 120, height: 120, discs: [dot], noise: 6, seed: i }), at);
    if (!found.ok) throw new Error(`the test requires a sticker, got ${JSON.stringify(found.error)}`);
    squares += distance(found.value.at, at) ** 2;
  }
  expect(Math.sqrt(squares / runs)).toBeLessThan(0.1);
});
