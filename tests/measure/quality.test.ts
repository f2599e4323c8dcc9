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

/** A pose in every third frame; between them only frames in which the leg was followed. */
const sparse = (all: ReturnType<typeof recording>) =>
  all
    .map((o, i) => (i % 3 === 0 ? o : { ...o, landmarks: null }))
    .filter((o) => o.landmarks || (o.motion?.foot && o.motion.shank) || o.tMs % 100 < 20);

test('frames between poses hide nothing: the time without the leg counts, and the poses in which it was out or had no texture', () => {
  expect(warnings({}, sparse)).toEqual([]);
  const away = (t: number) => (t % 1000 < 250 ? null : sitting({ ankleDeg: tapsAt(t) }));
  expect(warnings({ bodyAt: away }, sparse)).toEqual(['often-lost']);
  expect(warnings({ bodyAt: (t) => sitting({ ankleDeg: tapsAt(t), shiftY: 150 }) }, sparse)).toEqual(['leg-hidden']);
  const plain = (all: ReturnType<typeof recording>) =>
    all.map((o, i) => (Math.floor(i / 3) % 4 === 0 || !o.motion ? o : { ...o, motion: { ...o.motion, foot: null } }));
  expect(warnings({}, (all) => sparse(plain(all)))).toEqual(['little-texture']);
});
