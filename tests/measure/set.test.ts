import fc from 'fast-check';
import { expect, test } from 'vitest';
import { footTap } from '../../src/exercises/foot-tap.ts';
import { legRaise } from '../../src/exercises/leg-raise.ts';
import type { Observation } from '../../src/measure/observation.ts';
import { finishSet, startSet, stepSet } from '../../src/measure/set.ts';
import { ms } from '../../src/units.ts';
import { lying, movementsAt, recording, sitting, specOf, standing } from './pose-builder.ts';
import { kindsOf, runSet } from './set-runner.ts';

const RANGES = [12, 13, 4, 12, 11];
const tapsAt = (tMs: number) => movementsAt(tMs, { everyMs: 1400, lastsMs: 1000, ranges: RANGES });
const TAPS = recording({ lastsMs: 10_000, bodyAt: (t) => sitting({ ankleDeg: tapsAt(t) - 5 }), noisePx: 0.15, flow: true });
const SPEC = specOf(footTap);
const WHOLE = runSet(SPEC, TAPS);

test('a set of taps is counted live and afterwards, partial ones apart', () => {
  expect(WHOLE.result).toMatchObject({ count: 4, partialCount: 1 });
  expect(WHOLE.views[WHOLE.views.length - 1]).toMatchObject({ count: 4, partialCount: 1, phase: 'counting' });
  const ranges = WHOLE.result.reps.map((r) => r.rangeDeg);
  RANGES.forEach((range, i) => {
    expect(Math.abs((ranges[i] as number) - range)).toBeLessThan(0.5);
  });
});

test('the count follows each movement while it comes down', () => {
  const heard = WHOLE.events.filter((e) => e.kind === 'rep').map((e) => e.tMs);
  RANGES.forEach((_, i) => {
    const top = 1500 + i * 1400 + 500;
    expect(heard[i]).toBeGreaterThan(top);
    expect(heard[i]).toBeLessThan(top + 500);
  });
});

test('frame by frame from a kept recording, cut anywhere, the set is identical', () => {
  fc.assert(
    fc.property(fc.integer({ min: 0, max: TAPS.length }), (cut) => {
      const kept = JSON.parse(JSON.stringify(TAPS)) as Observation[];
      const first = runSet(SPEC, kept.slice(0, cut));
      const second = runSet(SPEC, kept.slice(cut), first.state);
      expect([...first.events, ...second.events]).toEqual(WHOLE.events);
      expect([...first.views, ...second.views]).toEqual(WHOLE.views);
      expect(second.result).toEqual(WHOLE.result);
    }),
    { numRuns: 12 },
  );
});

test('a state never changes once made, and finishing it changes nothing', () => {
  let state = startSet(SPEC);
  for (const observation of frozen(TAPS.slice(0, 150))) state = frozen(stepSet(frozen(state), observation).state);
  const [once, twice] = [finishSet(state), finishSet(state)];
  expect(twice).toEqual(once);
  expect(stepSet(state, TAPS[150] as Observation)).toEqual(stepSet(state, TAPS[150] as Observation));
});

function frozen<T>(value: T): T {
  if (typeof value !== 'object' || value === null || Object.isFrozen(value)) return value;
  Object.freeze(value);
  Object.values(value).forEach(frozen);
  return value;
}

test('counting begins once the person sits still, not while they walk in and sit down', () => {
  const bodyAt = (t: number) => {
    if (t < 2000) return standing({ facing: 'right', shiftX: -150 + t / 10, kneeDeg: 20 + 20 * Math.sin(t / 150) });
    if (t < 3000) return sitting({ thighDeg: -60 + (60 * (t - 2000)) / 1000, kneeDeg: 90, ankleDeg: 10 * Math.sin(t / 120) });
    return sitting({ ankleDeg: movementsAt(t, { firstMs: 4500, everyMs: 1400, lastsMs: 1000, ranges: [12, 12, 12] }) });
  };
  const run = runSet(SPEC, recording({ lastsMs: 10_000, bodyAt }));
  const ready = run.events.find((e) => e.kind === 'ready')?.tMs as number;
  expect(ready).toBeGreaterThan(3000);
  expect(ready).toBeLessThan(4200);
  expect(run.result).toMatchObject({ count: 3, partialCount: 0 });
  expect(run.views[run.views.length - 1]?.count).toBe(3);
  // The one who walked in towards the right sits towards the left: up is up all the same.
  expect(run.result.summary?.medianRangeDeg).toBeGreaterThan(11);
});

test('a movement before the person is ready does not count', () => {
  const bodyAt = (t: number) =>
    sitting({ ankleDeg: movementsAt(t, { firstMs: 100, everyMs: 3000, lastsMs: 600, ranges: [15, 12, 12] }) });
  expect(runSet(SPEC, recording({ lastsMs: 8000, bodyAt })).result.count).toBe(2);
});

test('what is done while the view is not yet good does not count, though the leg was still before', () => {
  const bodyAt = (t: number) =>
    sitting({
      ankleDeg: movementsAt(t, { firstMs: 1500, everyMs: 3000, lastsMs: 1000, ranges: [15, 12, 12] }),
      visibility: t < 2800 ? 0.2 : 0.95,
    });
  const run = runSet(SPEC, recording({ lastsMs: 10_000, bodyAt }));
  expect(run.events.find((e) => e.kind === 'ready')?.tMs).toBeGreaterThan(2800);
  expect(run.result.reps).toHaveLength(2);
  expect(run.views[run.views.length - 1]?.count).toBe(2);
});

test('someone who turns round on the chair first is measured as they sit then', () => {
  const bodyAt = (t: number) =>
    t < 1200
      ? sitting({ facing: 'right', ankleDeg: 8 * Math.sin(t / 60) })
      : sitting({ ankleDeg: movementsAt(t, { firstMs: 3000, everyMs: 1400, lastsMs: 1000, ranges: [12, 12, 12] }) });
  const run = runSet(SPEC, recording({ lastsMs: 8000, bodyAt }));
  expect(run.views[run.views.length - 1]?.count).toBe(3);
  expect(run.result.count).toBe(3);
  for (const { rangeDeg } of [...run.state.reps, ...run.result.reps]) expect(Math.abs(rangeDeg - 12)).toBeLessThan(1);
});

test('a long walk about the room, the other way round, does not turn the set over', () => {
  const bodyAt = (t: number) =>
    t < 15_000
      ? standing({ facing: 'right', shiftX: -100 + t / 100 })
      : sitting({ ankleDeg: movementsAt(t, { firstMs: 17_000, everyMs: 1400, lastsMs: 1000, ranges: [12, 12, 12] }) });
  const { result } = runSet(SPEC, recording({ fps: 15, lastsMs: 22_000, bodyAt }));
  expect(result.count).toBe(3);
  for (const { peakDeg } of result.reps) expect(Math.abs(peakDeg - 12)).toBeLessThan(1);
});

test('a recording cut tight, without any stillness, counts from its start', () => {
  const bodyAt = (t: number) =>
    sitting({ ankleDeg: movementsAt(t, { firstMs: 0, everyMs: 800, lastsMs: 800, ranges: Array(8).fill(14) }) });
  const run = runSet(SPEC, recording({ lastsMs: 6300, bodyAt }));
  expect(kindsOf(run)).not.toContain('ready');
  // Of the last tap the very end is missing, of the first the start.
  expect(run.result.count).toBeGreaterThanOrEqual(7);
});

test('a leg that is lost is told, and found again; the gap is no repetition', () => {
  const bodyAt = (t: number) =>
    t > 4000 && t < 6500
      ? null
      : sitting({ ankleDeg: movementsAt(t, { everyMs: 1200, lastsMs: 800, ranges: [12, 12, 0, 0, 0, 12] }) });
  const run = runSet(SPEC, recording({ lastsMs: 11_000, bodyAt }));
  expect(kindsOf(run)).toEqual(['ready', 'rep', 'rep', 'lost', 'found', 'rep']);
  expect(run.result).toMatchObject({ count: 3, partialCount: 0 });
  const lost = run.events.find((e) => e.kind === 'lost')?.tMs as number;
  expect(lost - 4000).toBeGreaterThan(600);
  expect(lost - 4000).toBeLessThan(900);
});

test('frames that do not come at all are a gap like frames without a leg', () => {
  const bodyAt = (t: number) => sitting({ ankleDeg: t < 3000 ? 0 : t < 6000 ? 14 : 0 });
  const all = recording({ lastsMs: 9000, bodyAt });
  const run = runSet(
    SPEC,
    all.filter((o) => o.tMs < 2900 || o.tMs > 6100),
  );
  expect(run.views[run.views.length - 1]?.count).toBe(0);
  expect(run.result).toMatchObject({ count: 0, partialCount: 0 });
});

test('the set ends by itself when the dose is done and nothing more comes', () => {
  const bodyAt = (t: number) => sitting({ ankleDeg: movementsAt(t, { everyMs: 1200, lastsMs: 800, ranges: [12, 12, 12] }) });
  const run = runSet(specOf(footTap, 'left', 3), recording({ lastsMs: 9000, bodyAt }));
  expect(kindsOf(run)).toEqual(['ready', 'rep', 'rep', 'rep', 'ended']);
  expect(run.events.at(-1)).toMatchObject({ why: 'target-reached' });
  expect(run.views.at(-1)?.phase).toBe('ended');
});

test('more than the dose is counted too while it goes on', () => {
  const bodyAt = (t: number) => sitting({ ankleDeg: movementsAt(t, { everyMs: 1200, lastsMs: 800, ranges: [12, 12, 12, 12] }) });
  expect(runSet(specOf(footTap, 'left', 2), recording({ lastsMs: 9000, bodyAt })).result.count).toBe(4);
});

test('the set ends when the person has left', () => {
  const bodyAt = (t: number) =>
    t > 5000 ? null : sitting({ ankleDeg: movementsAt(t, { everyMs: 1200, lastsMs: 800, ranges: [12, 12] }) });
  const run = runSet(SPEC, recording({ lastsMs: 13_000, bodyAt }));
  expect(kindsOf(run)).toEqual(['ready', 'rep', 'rep', 'lost', 'ended']);
  expect(run.events.at(-1)).toMatchObject({ why: 'left' });
});

test('someone who lies is not ready for a seated exercise, however still, and nothing of it counts', () => {
  const bodyAt = (t: number) => lying({ ankleDeg: tapsAt(t) - 5 });
  const run = runSet(SPEC, recording({ lastsMs: 10_000, bodyAt, flow: true }));
  expect(run.events).toEqual([]);
  expect(run.views.at(-1)).toMatchObject({ phase: 'setting-up', advice: ['not-sitting'], angleDeg: null });
  expect(run.result).toMatchObject({ count: 0, framesUsed: 0 });
});

test('a set that does not end itself counts what comes after the dose and after a long absence', () => {
  const bodyAt = (t: number) =>
    t > 4000 && t < 12_000 ? null : sitting({ ankleDeg: movementsAt(t, { everyMs: 12_000, lastsMs: 800, ranges: [12, 12] }) });
  const run = runSet({ ...specOf(footTap, 'left', 1), endsItself: false }, recording({ lastsMs: 17_000, bodyAt }));
  expect(kindsOf(run)).toEqual(['ready', 'rep', 'lost', 'found', 'rep']);
  expect(run.views.at(-1)).toMatchObject({ count: 2, phase: 'counting' });
});

test('nobody in the picture: nothing measured, and no numbers', () => {
  const { result, views } = runSet(SPEC, recording({ lastsMs: 2000, bodyAt: () => null }));
  expect(result).toMatchObject({ count: 0, framesUsed: 0, frames: 60, summary: null, reps: [] });
  expect(views.every((v) => v.angleDeg === null && v.leg === null && v.advice.includes('nobody'))).toBe(true);
});

test('no frames at all: an empty result', () => {
  expect(finishSet(startSet(SPEC))).toMatchObject({ frames: 0, framesUsed: 0, durationMs: 0, count: 0, summary: null });
});

test('standing is no posture for a lying exercise: nothing is measured', () => {
  expect(runSet(specOf(legRaise), recording({ lastsMs: 3000, bodyAt: () => standing() })).result.framesUsed).toBe(0);
  expect(runSet(specOf(legRaise), recording({ lastsMs: 3000, bodyAt: () => lying() })).result.framesUsed).toBe(90);
});

test('a set that is to be in place for two seconds is ready only then, and again only after two more when the view was bad between', () => {
  const spec = { ...SPEC, placedMs: ms(2000) };
  const still = recording({ lastsMs: 6000, bodyAt: () => sitting({ ankleDeg: -5 }), noisePx: 0.15, flow: true });
  const readyAt = (list: readonly Observation[]) =>
    runSet(spec, list).events.find(({ kind }) => kind === 'ready')?.tMs ?? Number.NaN;
  expect(readyAt(still)).toBeGreaterThanOrEqual(2000);
  expect(readyAt(still)).toBeLessThan(2200);
  const first = runSet(SPEC, still).events.find(({ kind }) => kind === 'ready')?.tMs ?? Number.NaN;
  expect(first).toBeLessThan(900);
  const gone = still.map((each) => (each.tMs > 1400 && each.tMs < 1900 ? { ...each, landmarks: null, motion: null } : each));
  expect(readyAt(gone)).toBeGreaterThanOrEqual(3900);
});

test('what is shown of the rest stays where the joint rested, and a hold grows while it is held', () => {
  const bodyAt = (t: number) => sitting({ ankleDeg: (t > 2000 && t < 5000 ? 12 : 0) - 5 });
  const { views } = runSet(SPEC, recording({ lastsMs: 7000, bodyAt, noisePx: 0.15, flow: true }));
  const during = views.filter((_, i) => i > 110 && i < 140);
  expect(during.length).toBeGreaterThan(20);
  for (const { restDeg, heldMs } of during) {
    expect(Math.abs(Number(restDeg) + 5)).toBeLessThan(1);
    expect(heldMs).not.toBeNull();
  }
  const held = during.map(({ heldMs }) => Number(heldMs));
  expect(Math.max(...held) - Math.min(...held)).toBeGreaterThan(700);
  expect(views.at(-1)?.heldMs).toBeNull();
});
