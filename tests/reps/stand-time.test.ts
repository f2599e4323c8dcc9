import { expect, test } from 'vitest';
import { standTime } from '../../src/reps/stand-time.ts';
import { deg, ms } from '../../src/units.ts';

/** A forefoot that goes up in 0.4 s, follows `held` for `heldMs`, and is put down in 0.4 s; 25 frames a second. */
function stand(heldMs: number, held: (share: number) => number, restDeg = 0) {
  const heightAt = (t: number): number => {
    if (t < 400) return held(0) * (t / 400);
    if (t < 400 + heldMs) return held((t - 400) / heldMs);
    return Math.max(0, held(1) * (1 - (t - 400 - heldMs) / 400));
  };
  return Array.from({ length: Math.ceil((heldMs + 900) / 40) }, (_, i) => ({
    tMs: ms(i * 40),
    deg: deg(restDeg + heightAt(i * 40)),
  }));
}

test('a forefoot held up is up from leaving the floor to coming down', () => {
  const found = standTime(
    stand(3000, () => 18),
    0,
    3,
  );
  // 3 of 18 degrees are passed after 67 ms, and again 333 ms into the way down.
  expect(Math.abs((found?.upMs ?? 0) - (3000 + 333 + 333))).toBeLessThanOrEqual(80);
  expect(found?.sankAfterMs).toBeNull();
});

test('one that sinks to a third of its height has sunk by a third half-way', () => {
  const found = standTime(
    stand(4000, (share) => 18 * (1 - 0.667 * share)),
    0,
    3,
  );
  expect(Math.abs((found?.sankAfterMs ?? 0) - (333 + 2000))).toBeLessThanOrEqual(120);
});

test('being put down in half a second is not sinking, and neither is a short dip that is made good', () => {
  expect(
    standTime(
      stand(800, () => 12),
      0,
      3,
    )?.sankAfterMs,
  ).toBeNull();
  const dip = (share: number) => (share > 0.4 && share < 0.6 ? 7 : 15);
  expect(standTime(stand(5000, dip), 0, 3)?.sankAfterMs).toBeNull();
});

test('heights count from the floor, wherever the foot rests in the picture', () => {
  const [plain, low] = [0, -12].map(
    (rest) =>
      standTime(
        stand(2000, () => 10, rest),
        rest,
        3.1,
      )?.upMs ?? Number.NaN,
  );
  expect(low).toBeCloseTo(plain as number, 6);
});

test('a foot that never leaves the floor has not stood', () => {
  expect(
    standTime(
      stand(2000, () => 2),
      0,
      3,
    ),
  ).toBeNull();
});
