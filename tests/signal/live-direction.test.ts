import fc from 'fast-check';
import { expect, test } from 'vitest';
import { type LiveDirection, stepDirection } from '../../src/signal/live-direction.ts';

interface Frame {
  readonly landmark: number | null;
  readonly turned: number | null;
}
const FRAME_MS = 1000 / 30;

const follow = (frames: readonly Frame[], start: LiveDirection | null = null): readonly (LiveDirection | null)[] => {
  let state = start;
  return frames.map(({ landmark, turned }) => {
    state = stepDirection(state, FRAME_MS, landmark, turned);
    return state;
  });
};
const still = (landmark: number, count: number): readonly Frame[] =>
  Array.from({ length: count }, () => ({ landmark, turned: 0 }));
const last = <T>(list: readonly T[]): T => list[list.length - 1] as T;

test('before the first landmark there is no direction', () => {
  expect(follow([{ landmark: null, turned: 5 }])).toEqual([null]);
});

test('the first landmark is taken as it is', () => {
  expect(follow([{ landmark: 87, turned: null }])[0]?.deg).toBe(87);
});

test('a turn in the picture is followed at once, though the landmarks shrink it to a third', () => {
  const settled = last(follow(still(90, 60)));
  const steps = [2, 4, 6, 4, 0, -4, -6, -4, -2];
  let real = 90;
  let seen = 90;
  const moving = steps.map((turned) => {
    real += turned;
    seen += turned / 3;
    return { frame: { landmark: seen, turned }, real };
  });
  const followed = follow(
    moving.map((m) => m.frame),
    settled,
  );
  moving.forEach((m, i) => {
    expect(Math.abs((followed[i]?.deg as number) - m.real)).toBeLessThan(1);
  });
});

test('the level comes from the landmarks: a wrong start is mended while the limb rests', () => {
  const wrong = follow([{ landmark: 60, turned: null }]);
  const mended = follow(still(90, 300), last(wrong));
  expect(Math.abs((last(mended)?.deg as number) - 90)).toBeLessThan(1);
});

test('without motion the landmarks lead', () => {
  const alone = follow(Array.from({ length: 30 }, (_, i) => ({ landmark: 90 + i, turned: null })));
  expect(Math.abs((last(alone)?.deg as number) - 119)).toBeLessThan(1);
});

test('a gap keeps the last direction and widens its variance; with the picture\u2019s motion it goes on turning', () => {
  const settled = last(follow(still(90, 60))) as LiveDirection;
  const gone = last(
    follow(
      Array.from({ length: 10 }, () => ({ landmark: null, turned: null })),
      settled,
    ),
  ) as LiveDirection;
  expect(gone.deg).toBe(settled.deg);
  expect(gone.variance).toBeGreaterThan(settled.variance + 100);
  const turning = last(
    follow(
      Array.from({ length: 10 }, () => ({ landmark: null, turned: 1.5 })),
      settled,
    ),
  ) as LiveDirection;
  expect(turning.deg).toBeCloseTo(settled.deg + 15, 10);
  expect(turning.variance).toBeLessThan(gone.variance);
});

test('whatever comes, the direction is a number with a variance above zero', () => {
  const clue = fc.record({
    landmark: fc.option(fc.double({ min: -720, max: 720, noNaN: true })),
    turned: fc.option(fc.double({ min: -40, max: 40, noNaN: true })),
    dtMs: fc.double({ min: 0, max: 5000, noNaN: true }),
  });
  fc.assert(
    fc.property(fc.array(clue, { maxLength: 60 }), (clues) => {
      let state: LiveDirection | null = null;
      for (const { landmark, turned, dtMs } of clues) {
        state = stepDirection(state, dtMs, landmark, turned);
        if (state) expect(Number.isFinite(state.deg) && state.variance > 0 && Number.isFinite(state.variance)).toBe(true);
      }
    }),
  );
});
