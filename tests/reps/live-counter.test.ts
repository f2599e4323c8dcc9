import fc from 'fast-check';
import { expect, test } from 'vitest';
import { type CounterState, LIVE_GAP_MS, startCounter, stepCounter } from '../../src/reps/live-counter.ts';
import type { AngleSample, Movement } from '../../src/reps/movement.ts';
import { type Deg, deg, ms } from '../../src/units.ts';
import { completeOf, RULE, rep, rest, samplesOf, withoutFrames } from './movement-builder.ts';

/** What is heard of a series, and when. */
function heard(samples: readonly AngleSample[], start: CounterState | null = null) {
  let state = start;
  const movements: Movement[] = [];
  for (const sample of samples) {
    const angle = sample.deg as Deg;
    if (!state) {
      state = startCounter(sample.tMs, angle);
      continue;
    }
    const [next, movement] = stepCounter(state, sample.tMs, angle, RULE);
    state = next;
    if (movement) movements.push(movement);
  }
  return { movements, state };
}

const TAPS = [rest(1000), ...rep(12), rest(400), ...rep(11), rest(400), ...rep(13), rest(1000)];

test('each movement is reported once, while it comes down', () => {
  const { movements } = heard(samplesOf(TAPS));
  expect(movements).toHaveLength(3);
  expect(completeOf(movements)).toBe(3);
  movements.forEach((m, i) => {
    expect(m.endMs).toBeGreaterThan(m.peakMs);
    expect(Math.abs(m.rangeDeg - ([12, 11, 13][i] as number))).toBeLessThan(0.2);
  });
  // The first one comes down from 1400 to 1800 ms.
  expect(movements[0]?.endMs).toBeLessThan(1700);
});

test('a movement of a third of the others is partial', () => {
  const { movements } = heard(samplesOf([...TAPS, ...rep(4), rest(500)]));
  expect(movements.map((m) => m.complete)).toEqual([true, true, true, false]);
});

test('the hold at the top is told', () => {
  const { movements } = heard(samplesOf([rest(1000), ...rep(20, 1000, 2000), rest(1000)], 60));
  expect(Math.abs((movements[0]?.holdMs as number) - 2000)).toBeLessThan(80);
});

test('tremor at the top is no second movement', () => {
  const wobbly = [
    { to: 20, lastsMs: 500 },
    { to: 16, lastsMs: 200 },
    { to: 20, lastsMs: 200 },
    { to: 0, lastsMs: 500 },
    rest(500),
  ];
  expect(heard(samplesOf([rest(1000), ...wobbly])).movements).toHaveLength(1);
});

test('what is too short for a movement is not reported', () => {
  const blink = samplesOf([rest(2000)]).map((s, i) => (i === 30 ? { ...s, deg: deg(9) } : s));
  expect(heard(blink).movements).toEqual([]);
});

test('a gap is never a repetition, at whatever angle the joint comes back', () => {
  fc.assert(
    fc.property(
      fc.double({ min: -60, max: 60, noNaN: true }),
      fc.integer({ min: LIVE_GAP_MS + 1, max: 60_000 }),
      (jump, gapMs) => {
        const before = samplesOf([rest(1500)]);
        const lastMs = before[before.length - 1]?.tMs as number;
        const after = samplesOf([rest(1500)]).map((s) => ({ tMs: ms(lastMs + gapMs + s.tMs), deg: deg(jump) }));
        const again = after.map((s) => ({ tMs: ms(s.tMs + 1500 + gapMs), deg: deg(0) }));
        expect(heard([...before, ...after, ...again]).movements).toEqual([]);
      },
    ),
  );
});

test('a movement whose top was not seen for long is not reported', () => {
  const samples = samplesOf([rest(1000), ...rep(12, 600, 1000), rest(1000)]);
  expect(heard(withoutFrames(samples, 1150, 2400)).movements).toEqual([]);
});

test('cut at any sample, kept as text and continued, the counting is the same', () => {
  const samples = samplesOf([...TAPS, ...rep(4), rest(300), ...rep(12, 900, 600), rest(600)]);
  const whole = heard(samples);
  fc.assert(
    fc.property(fc.integer({ min: 1, max: samples.length - 1 }), (cut) => {
      const first = heard(samples.slice(0, cut));
      const kept = JSON.parse(JSON.stringify(first.state)) as CounterState;
      const second = heard(samples.slice(cut), kept);
      expect([...first.movements, ...second.movements]).toEqual(whole.movements);
      expect(second.state).toEqual(whole.state);
    }),
  );
});

test('a long session remembers no more than it needs', () => {
  const { state } = heard(samplesOf([rest(1000), ...Array.from({ length: 200 }, () => rep(12, 400)).flat()]));
  expect(state?.ranges.length).toBeLessThanOrEqual(60);
});
