import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { QuarterTurn } from '../../src/capture/frame.ts';
import { type Luma, turned } from '../../src/capture/luma.ts';

const picture: fc.Arbitrary<Luma> = fc
  .record({ width: fc.integer({ min: 1, max: 7 }), height: fc.integer({ min: 1, max: 7 }) })
  .chain(({ width, height }) =>
    fc.uint8Array({ minLength: width * height, maxLength: width * height }).map((data) => ({ width, height, data })),
  );
const times = (n: number, turn: QuarterTurn, from: Luma): Luma => (n === 0 ? from : times(n - 1, turn, turned(from, turn)));

describe('a turned picture', () => {
  const wide: Luma = { width: 3, height: 2, data: Uint8Array.of(1, 2, 3, 4, 5, 6) };

  test('is turned clockwise', () => {
    expect(turned(wide, 90)).toEqual({ width: 2, height: 3, data: Uint8Array.of(4, 1, 5, 2, 6, 3) });
    expect(turned(wide, 180)).toEqual({ width: 3, height: 2, data: Uint8Array.of(6, 5, 4, 3, 2, 1) });
    expect(turned(wide, 270)).toEqual({ width: 2, height: 3, data: Uint8Array.of(3, 6, 2, 5, 1, 4) });
    expect(turned(wide, 0)).toEqual(wide);
  });

  test('four quarter turns are none, two are a half turn, three are one the other way', () => {
    fc.assert(
      fc.property(picture, (from) => {
        expect(times(4, 90, from)).toEqual(from);
        expect(times(2, 90, from)).toEqual(turned(from, 180));
        expect(times(3, 90, from)).toEqual(turned(from, 270));
      }),
    );
  });
});
