import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { ASTRAY_AFTER_MS, LENGTH_TOLERANCE, type Steadiness, watchLengths } from '../../src/pose/steadiness.ts';
import { ms } from '../../src/units.ts';
import { body } from './body-builder.ts';

/** A left leg with the given lengths, the thigh at `deg` from the horizontal. */
const leg = (thigh: number, shank: number, deg = 0) => {
  const [c, s] = [Math.cos((deg * Math.PI) / 180), Math.sin((deg * Math.PI) / 180)];
  const knee = [300 + thigh * c, 300 - thigh * s] as const;
  return body({ leftHip: [300, 300], leftKnee: knee, leftAnkle: [knee[0] + shank * c, knee[1] - shank * s] });
};

interface Look {
  readonly tMs: number;
  readonly thigh: number;
  readonly shank: number;
  readonly deg?: number;
}

/** When tracking was found astray, ms. */
function astrayAt(looks: readonly Look[]): readonly number[] {
  let state: Steadiness | null = null;
  const found: number[] = [];
  for (const { tMs, thigh, shank, deg } of looks) {
    const watched: ReturnType<typeof watchLengths> = watchLengths(state, leg(thigh, shank, deg), 'left', ms(tMs));
    state = watched.state;
    if (watched.astray) found.push(tMs);
  }
  return found;
}

const looks = (count: number, stepMs: number, of: (tMs: number) => Omit<Look, 'tMs'>): readonly Look[] =>
  Array.from({ length: count }, (_, i) => ({ tMs: i * stepMs, ...of(i * stepMs) }));

describe('the lengths of the leg', () => {
  test('that stay while the leg is raised are never astray', () => {
    const raise = looks(300, 33, (tMs) => ({ thigh: 150, shank: 140, deg: 45 - 45 * Math.cos(tMs / 500) }));
    expect(astrayAt(raise)).toEqual([]);
  });

  test.each([10, 33, 66])('that jump and stay are astray after the same time at any frame rate: %i ms a frame', (stepMs) => {
    const jump = looks(Math.ceil(3000 / stepMs), stepMs, (tMs) => ({ thigh: tMs < 1000 ? 150 : 60, shank: 140 }));
    const [first] = astrayAt(jump);
    expect(first).toBeGreaterThanOrEqual(1000 + ASTRAY_AFTER_MS);
    expect(first).toBeLessThanOrEqual(1000 + ASTRAY_AFTER_MS + 2 * stepMs);
  });

  test('that are wrong for a moment are not', () => {
    const blink = looks(120, 33, (tMs) => ({ thigh: 150, shank: tMs % 1000 < 300 && tMs > 500 ? 300 : 140 }));
    expect(astrayAt(blink)).toEqual([]);
  });

  test('that change slowly, as when a chair is moved, are followed', () => {
    const slow = looks(1800, 33, (tMs) => ({ thigh: 150 + tMs / 300, shank: 140 + tMs / 300 }));
    expect(slow.at(-1)?.thigh).toBeGreaterThan(150 * (1 + LENGTH_TOLERANCE));
    expect(astrayAt(slow)).toEqual([]);
  });

  test('do not depend on the size of the picture', () => {
    const lengths = fc.array(fc.integer({ min: 50, max: 300 }), { minLength: 2, maxLength: 40 });
    fc.assert(
      fc.property(lengths, fc.constantFrom(0.25, 0.5, 2, 4), (thighs, scale) => {
        const at = (factor: number) => thighs.map((thigh, i) => ({ tMs: i * 100, thigh: thigh * factor, shank: 140 * factor }));
        expect(astrayAt(at(scale))).toEqual(astrayAt(at(1)));
      }),
    );
  });
});
