import { describe, expect, test } from 'vitest';
import { type LegsSeen, type NamedLegs, nameHeldLeg } from '../../src/pose/held-leg-names.ts';
import { LANDMARK, LANDMARK_COUNT, type Landmark, type LandmarkName, landmark, type Side } from '../../src/pose/landmarks.ts';
import { deg, ms, px, radOfDeg, ratio } from '../../src/units.ts';

interface Leg {
  readonly upDeg: number;
  readonly shankPx: number;
  readonly z: number;
}

/** A person on their back, feet to the right; each leg straight. */
function body(legs: Readonly<Record<Side, Leg>>): readonly Landmark[] {
  const all: Landmark[] = Array.from({ length: LANDMARK_COUNT }, () => ({
    x: px(200),
    y: px(300),
    z: px(0),
    visibility: ratio(0.9),
  }));
  const put = (name: LandmarkName, x: number, y: number, z: number) => {
    all[LANDMARK[name]] = { x: px(x), y: px(y), z: px(z), visibility: ratio(0.9) };
  };
  for (const side of ['left', 'right'] as const) {
    const { upDeg, shankPx, z } = legs[side];
    const along = (length: number): readonly [number, number] => [
      300 + length * Math.cos(radOfDeg(deg(upDeg))),
      300 - length * Math.sin(radOfDeg(deg(upDeg))),
    ];
    put(`${side}Hip`, 300, 300, z);
    put(`${side}Knee`, ...along(90), z);
    put(`${side}Ankle`, ...along(90 + shankPx), z);
    put(`${side}Heel`, ...along(90 + 1.12 * shankPx), z);
    put(`${side}Toe`, ...along(90 + 1.5 * shankPx), z);
  }
  return all;
}

const NEAR = { shankPx: 88, z: -40 } as const;
const FAR = { shankPx: 80, z: 40 } as const;
/** The left leg is near and held up. */
const right = body({ left: { ...NEAR, upDeg: 50 }, right: { ...FAR, upDeg: -2 } });
/** The same with the names of the legs exchanged from the knee on; depth goes with the names. */
const exchanged = body({
  left: { ...NEAR, shankPx: FAR.shankPx, upDeg: -2 },
  right: { ...FAR, shankPx: NEAR.shankPx, upDeg: 50 },
});
/** On the way from one to the other. */
const between = body({ left: { ...NEAR, upDeg: 23 }, right: { ...FAR, upDeg: 20 } });
/** The far leg is held up, the near one lies. */
const farUp = body({ left: { ...NEAR, upDeg: 0 }, right: { ...FAR, upDeg: 50 } });

/** What becomes of several frames, 50 ms apart. */
function named(frames: readonly (readonly Landmark[])[], side: Side = 'left'): readonly NamedLegs[] {
  let seen: LegsSeen | null = null;
  return frames.map((landmarks, i) => {
    const now = nameHeldLeg(seen, landmarks, side, ms(50 * i));
    seen = now.seen;
    return now;
  });
}
const places = (landmarks: readonly Landmark[]) => landmarks.map(({ x, y }) => [x, y]);

describe('the legs of somebody who holds the near one up', () => {
  test('named right they stay as they are', () => {
    for (const { landmarks, sure } of named(Array(5).fill(right))) {
      expect(landmarks).toBe(right);
      expect(sure).toBe(true);
    }
  });

  test('named the other way round, even from the first frame on, their places are put right; depth stays with the name', () => {
    const found = named(Array(5).fill(exchanged));
    const last = found.at(-1) as NamedLegs;
    expect(places(last.landmarks)).toEqual(places(right));
    expect(last.sure).toBe(true);
    expect(landmark(last.landmarks, 'leftKnee').z).toBe(NEAR.z);
    // Before enough has been compared nothing is believed.
    expect(found[0]).toMatchObject({ landmarks: exchanged, sure: false });
  });

  test('once put right they stay so when they are looked at again', () => {
    const once = named(Array(5).fill(exchanged)).at(-1)?.landmarks as readonly Landmark[];
    expect(named(Array(5).fill(once)).at(-1)?.landmarks).toBe(once);
  });

  test('points between the two are not believed', () => {
    expect(named([right, right, right, between]).map(({ sure }) => sure)).toEqual([true, true, true, false]);
  });

  test('the right leg is told as the left one is', () => {
    const mirrored = body({
      right: { ...NEAR, shankPx: FAR.shankPx, upDeg: -2 },
      left: { ...FAR, shankPx: NEAR.shankPx, upDeg: 50 },
    });
    const { landmarks } = named(Array(5).fill(mirrored), 'right').at(-1) as NamedLegs;
    expect(landmark(landmarks, 'rightAnkle').y).toBeLessThan(landmark(landmarks, 'leftAnkle').y - 50);
  });
});

test('a far leg that is held up keeps its name: it is shorter', () => {
  for (const { landmarks, sure } of named(Array(40).fill(farUp))) {
    expect(landmarks).toBe(farUp);
    expect(sure).toBe(false);
  }
});

test('two legs that lie are left alone', () => {
  const flat = body({ left: { ...NEAR, upDeg: 2 }, right: { ...FAR, upDeg: 5 } });
  for (const { landmarks, sure } of named(Array(5).fill(flat))) {
    expect(landmarks).toBe(flat);
    expect(sure).toBe(true);
  }
});

test('a leg that is lowered to lie is believed again after some seconds', () => {
  const flat = body({ left: { ...NEAR, upDeg: 2 }, right: { ...FAR, upDeg: 0 } });
  const before = named(Array(5).fill(right)).at(-1) as NamedLegs;
  expect(nameHeldLeg(before.seen, flat, 'left', ms(1000)).sure).toBe(false);
  expect(nameHeldLeg(before.seen, flat, 'left', ms(12_000)).sure).toBe(true);
});
