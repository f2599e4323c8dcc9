import { expect, test } from 'vitest';
import { CREDIBLE_DEG, type DirectionClue, fuseDirections } from '../../src/signal/fused-direction.ts';
import { deg, ratio } from '../../src/units.ts';

const turn = (turnDeg: number, anchor = 1) => ({ turnDeg: deg(turnDeg), seDeg: deg(0.1), zncc: ratio(0.95), anchor });
/** A foot that lifts by `range` three times within 12 s, in frames of 100 ms. */
const lifted = (i: number, range = 12) => (range * (1 - Math.cos((2 * Math.PI * i) / 40))) / 2;
const FRAMES = Array.from({ length: 120 }, (_, i) => i);
/** Landmarks that see the place at rest and shrink the movement to a third. */
const shrunk = (i: number): DirectionClue => ({ landmarkDeg: 170 + lifted(i) / 3, turn: turn(lifted(i)) });

test('the picture gives the movement, the landmarks at rest the level', () => {
  fuseDirections(FRAMES.map(shrunk)).forEach((d, i) => {
    expect(Math.abs((d?.deg as number) - (170 + lifted(i)))).toBeLessThan(1);
    expect(d?.source).toBe('flow');
  });
});

test('landmark jitter hardly moves the level', () => {
  const clues = FRAMES.map(shrunk).map((c, i) => ({ ...c, landmarkDeg: (c.landmarkDeg as number) + (i % 3) - 1 }));
  expect(Math.abs((fuseDirections(clues)[0]?.deg as number) - 170)).toBeLessThan(1.1);
});

test('a match far from what the landmarks see is no match', () => {
  const wrong = 50;
  const clues = FRAMES.map(shrunk).map((c, i) => (i === wrong ? { ...c, turn: turn(lifted(i) + 2 * CREDIBLE_DEG) } : c));
  const fused = fuseDirections(clues);
  expect(fused[wrong]?.source).toBe('landmarks');
  expect(Math.abs((fused[wrong]?.deg as number) - 175)).toBeLessThan(10);
  expect(fused.filter((d) => d?.source === 'flow')).toHaveLength(FRAMES.length - 1);
});

test('a new anchor brings its own level and no jump', () => {
  // Taken up anew at frame 80, at rest: its turns begin at 0 again, from another picture.
  // The first one was taken from a picture in which the foot stood 0.8 degrees higher.
  const clues = FRAMES.map((i) => ({
    landmarkDeg: 170 + lifted(i) / 3,
    turn: i < 80 ? turn(lifted(i) - 0.8, 1) : turn(lifted(i), 2),
  }));
  const fused = fuseDirections(clues);
  expect(Math.abs((fused[80]?.deg as number) - (fused[79]?.deg as number))).toBeLessThan(1);
  expect(Math.abs((fused[100]?.deg as number) - 182)).toBeLessThan(1);
});

test('frames without a turn take the landmarks, shifted by their usual difference to the picture', () => {
  const clues = FRAMES.map((i) => ({ landmarkDeg: 170 + lifted(i), turn: i >= 40 && i < 60 ? null : turn(lifted(i)) }));
  const fused = fuseDirections(clues);
  expect(fused[50]?.source).toBe('landmarks');
  expect(Math.abs((fused[50]?.deg as number) - (170 + lifted(50)))).toBeLessThan(0.1);
  expect(fused[50]?.variance).toBeGreaterThan(10 * (fused[20]?.variance as number));
});

test('frames without landmarks go on by the turn', () => {
  const clues = FRAMES.map(shrunk).map((c, i) => (i > 60 && i < 90 ? { ...c, landmarkDeg: null } : c));
  expect(Math.abs((fuseDirections(clues)[80]?.deg as number) - (170 + lifted(80)))).toBeLessThan(1);
});

test('a match that the landmarks of the frame before did not believe is not believed without landmarks', () => {
  const wrong = [49, 50, 51];
  const clues = FRAMES.map(shrunk).map((c, i) => ({
    landmarkDeg: i % 3 === 1 ? c.landmarkDeg : null,
    turn: wrong.includes(i) ? turn(lifted(i) + 2 * CREDIBLE_DEG) : c.turn,
  }));
  const fused = fuseDirections(clues);
  expect(fused[49]?.source).toBe('landmarks');
  expect([fused[50], fused[51]]).toEqual([null, null]);
  expect(fused.slice(52).every((d) => d?.source === 'flow')).toBe(true);
});

test('where nothing is known there is nothing', () => {
  expect(fuseDirections([{ landmarkDeg: null, turn: null }])).toEqual([null]);
  expect(fuseDirections([{ landmarkDeg: null, turn: turn(4) }])).toEqual([null]);
  expect(fuseDirections([])).toEqual([]);
});

test('a direction that passes 180 goes on without a jump', () => {
  const clues = FRAMES.map((i) => ({ landmarkDeg: ((((175 + lifted(i) + 180) % 360) + 360) % 360) - 180, turn: null }));
  fuseDirections(clues).forEach((d, i) => {
    expect(d?.deg).toBeCloseTo(175 + lifted(i), 8);
  });
});
