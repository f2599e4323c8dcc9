import { expect, test } from 'vitest';
import { footTap } from '../../src/exercises/foot-tap.ts';
import { movementsAt, type RecordingOptions, recording, sitting, specOf } from './pose-builder.ts';
import { runSet } from './set-runner.ts';

const tapsAt = (t: number) => movementsAt(t, { everyMs: 2000, lastsMs: 1500, ranges: [12, 12, 12] });
const warnings = (
  options: Partial<RecordingOptions> = {},
  change: (o: ReturnType<typeof recording>) => ReturnType<typeof recording> = (o) => o,
) => {
  const seen = recording({ lastsMs: 9000, bodyAt: (t) => sitting({ ankleDeg: tapsAt(t) }), flow: true, ...options });
  return runSet(specOf(footTap), change(seen)).result.quality.warnings;
};

test('a good recording carries no warning', () => {
  expect(warnings()).toEqual([]);
});

test('a small foot', () => {
  expect(warnings({ bodyAt: (t) => sitting({ ankleDeg: tapsAt(t), thighPx: 55 }) })).toEqual(['foot-small']);
});

test('an ankle outside the picture', () => {
  expect(warnings({ bodyAt: (t) => sitting({ ankleDeg: tapsAt(t), shiftY: 150 }) })).toEqual(['leg-hidden']);
});

test('often lost', () => {
  expect(warnings({ bodyAt: (t) => (t % 1000 < 250 ? null : sitting({ ankleDeg: tapsAt(t) })) })).toEqual(['often-lost']);
});

test('few frames a second', () => {
  expect(warnings({ fps: 8 })).toEqual(['low-frame-rate']);
  expect(warnings({ fps: 12 })).toEqual([]);
});

test('a leg without texture, whose motion is mostly not found', () => {
  expect(
    warnings({}, (all) => all.map((o, i) => (i % 4 === 0 || !o.motion ? o : { ...o, motion: { ...o.motion, foot: null } }))),
  ).toEqual(['little-texture']);
});

test('where motion was never looked for there is no talk of texture', () => {
  expect(warnings({ flow: false })).toEqual([]);
});
