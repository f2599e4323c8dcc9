import fc from 'fast-check';
import { expect, test } from 'vitest';
import { segmentSet } from '../../src/reps/segment-set.ts';
import { deg } from '../../src/units.ts';
import { completeOf, RULE, rep, rest, samplesOf, withoutFrames, withoutSeen } from './movement-builder.ts';

const ONE = [rest(1000), ...rep(12, 1000), rest(1000)];

test('one movement is found with its start, peak, end and range', () => {
  const [m, ...more] = segmentSet(samplesOf(ONE, 60), RULE);
  expect(more).toEqual([]);
  expect(m).toMatchObject({ complete: true, returned: true, cut: false });
  // A raised cosine of 1 s leaves its lowest tenth 102 ms after it sets off.
  expect(Math.abs((m?.startMs as number) - 1102)).toBeLessThan(34);
  expect(Math.abs((m?.peakMs as number) - 1500)).toBeLessThan(17);
  expect(Math.abs((m?.endMs as number) - 1898)).toBeLessThan(34);
  expect(m?.rangeDeg).toBeCloseTo(12, 1);
  expect(m?.peakDeg).toBeCloseTo(12, 5);
});

test('the hold is told without coming to rest and leaving', () => {
  const [m] = segmentSet(samplesOf([rest(1000), ...rep(20, 1000, 2000), rest(1000)], 60), RULE);
  expect(Math.abs((m?.holdMs as number) - 2000)).toBeLessThan(40);
});

test('rest and a drifting baseline are no movements', () => {
  expect(segmentSet(samplesOf([rest(20_000)]), RULE)).toEqual([]);
  const drift = samplesOf([rest(30_000)]).map((s) => ({ ...s, deg: deg(s.tMs / 6000) }));
  expect(completeOf(segmentSet(drift, RULE))).toBe(0);
});

test('a movement of a third of the others is kept apart as partial', () => {
  const found = segmentSet(samplesOf([rest(1000), ...rep(12), rest(300), ...rep(4), rest(300), ...rep(13), rest(1000)]), RULE);
  expect(found.map((m) => m.complete)).toEqual([true, false, true]);
});

test('a movement below the least of the exercise is never complete, however small the others are', () => {
  const found = segmentSet(samplesOf([rest(1000), ...rep(2.6), rest(300), ...rep(2.5), rest(1000)]), RULE);
  expect(found.map((m) => m.complete)).toEqual([false, false]);
});

test('a wobble at the top does not part a movement', () => {
  const wobbly = [
    rest(1000),
    { to: 20, lastsMs: 500 },
    { to: 16, lastsMs: 200 },
    { to: 20, lastsMs: 200 },
    { to: 0, lastsMs: 500 },
    rest(1000),
  ];
  const found = segmentSet(samplesOf([...ONE, ...rep(20), rest(500), ...wobbly]), RULE);
  expect(completeOf(found)).toBe(3);
  expect(found).toHaveLength(3);
});

test('a movement that comes back in two steps is one', () => {
  const steps = [
    { to: 20, lastsMs: 500 },
    { to: 11, lastsMs: 300 },
    { to: 13, lastsMs: 200 },
    { to: 0, lastsMs: 300 },
    rest(800),
  ];
  expect(segmentSet(samplesOf([rest(1000), ...rep(20), rest(500), ...steps]), RULE).map((m) => m.complete)).toEqual([true, true]);
});

test('taps that do not quite come down between are counted all the same', () => {
  const low = 5;
  const taps = Array.from({ length: 6 }, () => [
    { to: 14, lastsMs: 200 },
    { to: low, lastsMs: 200 },
  ]).flat();
  expect(completeOf(segmentSet(samplesOf([rest(1000), ...taps, { to: 0, lastsMs: 300 }, rest(1000)]), RULE))).toBe(6);
});

test('a movement that is still up when the samples end is not complete and said to be cut', () => {
  const found = segmentSet(samplesOf([...ONE, { to: 12, lastsMs: 500 }, rest(500, 12)]), RULE);
  expect(found.map((m) => m.complete)).toEqual([true, false]);
  expect(found[1]).toMatchObject({ returned: false, cut: true });
});

test('a movement under way when the samples begin is said to be cut', () => {
  const samples = samplesOf(ONE, 60).filter((s) => s.tMs > 1250);
  expect(segmentSet(samples, RULE)[0]?.cut).toBe(true);
});

test('a gap is never a repetition: rest, nothing, and rest at whatever angle', () => {
  const gap = fc.record({
    lastsMs: fc.integer({ min: 300, max: 20_000 }),
    jump: fc.double({ min: -60, max: 60, noNaN: true }),
    seen: fc.boolean(),
  });
  fc.assert(
    fc.property(fc.array(gap, { minLength: 1, maxLength: 5 }), (gaps) => {
      let samples = samplesOf([rest(1500)]);
      for (const { lastsMs, jump, seen } of gaps) {
        const lastMs = samples[samples.length - 1]?.tMs as number;
        const next = samplesOf([rest(1500)]).map((s) => ({ tMs: (lastMs + lastsMs + s.tMs) as typeof s.tMs, deg: deg(jump) }));
        const between = seen ? [{ tMs: (lastMs + 33) as (typeof next)[0]['tMs'], deg: null }] : [];
        samples = [...samples, ...between, ...next];
      }
      expect(segmentSet(samples, RULE)).toEqual([]);
    }),
  );
});

test.each([
  { what: 'the rise', from: 1000, to: 1450 },
  { what: 'the top', from: 1250, to: 1750 },
  { what: 'the way back', from: 1550, to: 2050 },
  { what: 'most of the way up, and the top', from: 1080, to: 1720 },
])(
  'a movement of which a short gap hides $what is one, and said to be cut, whether frames lack the leg or are missing',
  ({ from, to }) => {
    const samples = samplesOf([rest(1000), ...rep(12, 1000), rest(1000)]);
    for (const seen of [withoutSeen(samples, from, to), withoutFrames(samples, from, to)]) {
      const found = segmentSet(seen, RULE);
      expect(found.map(({ complete, cut }) => ({ complete, cut }))).toEqual([{ complete: true, cut: true }]);
      expect(found[0]?.rangeDeg).toBeLessThan(12.1);
    }
  },
);

test.each([
  { what: 'the rise', from: 1000, to: 1950 },
  { what: 'the top', from: 1250, to: 2150 },
  { what: 'the way back', from: 2100, to: 2900 },
])('a movement of which a gap of more than 0.7 s hides $what is not complete', ({ from, to }) => {
  const samples = samplesOf([rest(1000), ...rep(12, 1000, 800), rest(1000)]);
  expect(completeOf(segmentSet(withoutSeen(samples, from, to), RULE))).toBe(0);
  expect(completeOf(segmentSet(withoutFrames(samples, from, to), RULE))).toBe(0);
});

test('a movement of which only the way back was seen is named once, and not counted', () => {
  const samples = samplesOf([rest(1000), ...rep(12, 1000, 800), rest(1000)]);
  for (const [from, to] of [
    [900, 1900],
    [1200, 2000],
  ] as const) {
    const found = segmentSet(withoutFrames(samples, from, to), RULE);
    expect(found.map(({ complete, cut }) => ({ complete, cut }))).toEqual([{ complete: false, cut: true }]);
  }
});

test('of a movement that a gap hides whole there is nothing, and a jump of the level over a gap makes none', () => {
  const samples = samplesOf([rest(1000), ...rep(12, 600), rest(1000)]);
  expect(segmentSet(withoutFrames(samples, 1000, 1610), RULE)).toEqual([]);
  const jumped = samplesOf([rest(3000)]).map((s) => ({ ...s, deg: deg(s.tMs > 1500 ? 9 : 0) }));
  expect(segmentSet(withoutFrames(jumped, 1200, 1700), RULE)).toEqual([]);
});

test('movements before and after a jump of the level over a gap are what they are', () => {
  const samples = samplesOf([rest(1000), ...rep(12), rest(1200), ...rep(12), rest(1000)]);
  for (const jump of [-20, -6, 6, 20]) {
    const jumped = withoutFrames(samples, 2100, 2600).map((s) => ({ ...s, deg: deg((s.deg ?? 0) + (s.tMs > 2300 ? jump : 0)) }));
    const found = segmentSet(jumped, RULE);
    expect(found.map(({ complete, cut }) => ({ complete, cut }))).toEqual([
      { complete: true, cut: false },
      { complete: true, cut: false },
    ]);
    for (const { rangeDeg } of found) expect(Math.abs(rangeDeg - 12)).toBeLessThan(0.2);
  }
});

test('one or two lost frames inside a movement do no harm', () => {
  const samples = samplesOf(ONE);
  expect(completeOf(segmentSet(withoutFrames(samples, 1480, 1540), RULE))).toBe(1);
});

test('15, 30 and 60 frames a second count the same', () => {
  const movement = fc.record({
    range: fc.double({ min: 8, max: 14, noNaN: true }),
    lastsMs: fc.integer({ min: 500, max: 3000 }),
    restMs: fc.integer({ min: 0, max: 900 }),
  });
  fc.assert(
    fc.property(fc.array(movement, { minLength: 1, maxLength: 12 }), (movements) => {
      const stretches = [
        rest(1000),
        ...movements.flatMap((m) => [...rep(m.range, m.lastsMs), ...(m.restMs > 0 ? [rest(m.restMs)] : [])]),
        rest(1000),
      ];
      for (const fps of [15, 30, 60]) expect(completeOf(segmentSet(samplesOf(stretches, fps), RULE))).toBe(movements.length);
    }),
    { numRuns: 50 },
  );
});

test('the level of the angles does not matter', () => {
  const stretches = samplesOf([...ONE, ...rep(11), rest(500), ...rep(4), rest(500)]);
  const raised = stretches.map((s) => ({ ...s, deg: s.deg === null ? null : deg(s.deg - 37) }));
  const times = (all: typeof stretches) => segmentSet(all, RULE).map((m) => [m.startMs, m.peakMs, m.endMs, m.complete]);
  expect(times(raised)).toEqual(times(stretches));
});
