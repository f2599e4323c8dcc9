import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { QuarterTurn } from '../../src/capture/frame.ts';
import { turned } from '../../src/capture/luma.ts';
import { fromTurned } from '../../src/pose/turned-picture.ts';

const TURNS: readonly QuarterTurn[] = [0, 90, 180, 270];
const size = fc.record({ width: fc.integer({ min: 1, max: 9 }), height: fc.integer({ min: 1, max: 9 }) });

describe('a point of a turned picture', () => {
  test('comes back to where it is in the upright one: corners of a wide picture', () => {
    const wide = { width: 640, height: 480 };
    // Clockwise by 90: the upright picture's lower left corner is the turned one's upper left.
    expect(fromTurned({ x: 0, y: 0, z: 0 }, 90, wide)).toMatchObject({ x: 0, y: 480 });
    expect(fromTurned({ x: 1, y: 0, z: 0 }, 90, wide)).toMatchObject({ x: 0, y: 0 });
    expect(fromTurned({ x: 0, y: 0, z: 0 }, 180, wide)).toMatchObject({ x: 640, y: 480 });
    expect(fromTurned({ x: 0, y: 0, z: 0 }, 270, wide)).toMatchObject({ x: 640, y: 0 });
    expect(fromTurned({ x: 0.25, y: 0.5, z: 0 }, 0, wide)).toMatchObject({ x: 160, y: 240 });
  });

  test('has a depth in px of the turned picture’s width', () => {
    expect(fromTurned({ x: 0, y: 0, z: 0.5 }, 0, { width: 640, height: 480 }).z).toBe(320);
    expect(fromTurned({ x: 0, y: 0, z: 0.5 }, 90, { width: 640, height: 480 }).z).toBe(240);
  });

  test('agrees with the turning of pictures: a bright pixel is found where it was', () => {
    fc.assert(
      fc.property(size, fc.constantFrom(...TURNS), fc.nat(), ({ width, height }, turn, seed) => {
        const at = seed % (width * height);
        const data = new Uint8Array(width * height);
        data[at] = 255;
        const picture = turned({ width, height, data }, turn);
        const found = picture.data.indexOf(255);
        // Centres of pixels, in shares of the turned picture.
        const x = ((found % picture.width) + 0.5) / picture.width;
        const y = (Math.floor(found / picture.width) + 0.5) / picture.height;
        const back = fromTurned({ x, y, z: 0 }, turn, { width, height });
        expect(back.x).toBeCloseTo((at % width) + 0.5, 9);
        expect(back.y).toBeCloseTo(Math.floor(at / width) + 0.5, 9);
      }),
    );
  });
});
