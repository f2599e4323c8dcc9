/** Frames that only the picture's motion was read from, as they come live between the poses of a slow machine. */
import fc from 'fast-check';
import { expect, test } from 'vitest';
import { footTap } from '../../src/exercises/foot-tap.ts';
import { legRaise } from '../../src/exercises/leg-raise.ts';
import { MOTION_ALONE_MS } from '../../src/measure/motion-alone.ts';
import type { Observation } from '../../src/measure/observation.ts';
import { type BodyPose, lying, movementsAt, recording, sitting, specOf, standing } from './pose-builder.ts';
import { kindsOf, runSet } from './set-runner.ts';

const SPEC = specOf(footTap);
const NOT_FOLLOWED = { foot: null, shank: null, thigh: null } as const;

/** Only every so many-th frame keeps its pose. */
const sparse = (all: readonly Observation[], every: number): readonly Observation[] =>
  all.map((o, i) => (i % every === 0 ? o : { ...o, landmarks: null }));
/** Only those frames, and nothing in between. */
const posedOnly = (all: readonly Observation[], every: number): readonly Observation[] => all.filter((_, i) => i % every === 0);

const taps = (everyMs: number, lastsMs: number, ranges: readonly number[], fps = 30) =>
  recording({
    fps,
    lastsMs: 1500 + everyMs * ranges.length + 1500,
    bodyAt: (t) => sitting({ ankleDeg: movementsAt(t, { everyMs, lastsMs, ranges }) }),
    noisePx: 0.15,
    flow: true,
  });

test.each([3, 5, 8])('a set with a pose in every %ith frame is the set with a pose in each', (every) => {
  const all = taps(1400, 1000, [12, 13, 4, 12, 11]);
  const [whole, run] = [runSet(SPEC, all), runSet(SPEC, sparse(all, every))];
  expect(run.result).toMatchObject({ count: 4, partialCount: 1, frames: all.length, framesUsed: all.length });
  expect(run.result.quality.warnings).toEqual([]);
  expect(kindsOf(run)).toEqual(kindsOf(whole));
  run.result.reps.forEach((rep, i) => {
    expect(rep.source).toBe('flow');
    expect(Math.abs(rep.rangeDeg - (whole.result.reps[i]?.rangeDeg as number))).toBeLessThan(0.3);
  });
  run.events.forEach(({ tMs }, i) => {
    expect(Math.abs(tMs - (whole.events[i]?.tMs as number))).toBeLessThanOrEqual(every * 34);
  });
});

test('taps of a quarter of a second are counted by the frames between poses, and are missed or cut without them', () => {
  const ranges = Array<number>(12).fill(14);
  const all = taps(300, 250, ranges);
  const { result, state } = runSet(SPEC, sparse(all, 3));
  expect(result).toMatchObject({ count: 12, partialCount: 0 });
  expect(state.count).toBe(12);
  const off = (reps: readonly { readonly rangeDeg: number }[]) =>
    reps.reduce((sum, { rangeDeg }) => sum + Math.abs(rangeDeg - 14), 0) / 12;
  const without = runSet(SPEC, posedOnly(all, 3)).result;
  expect(off(result.reps)).toBeLessThan(1);
  expect(without.count < 12 || off(without.reps) > 2 * off(result.reps)).toBe(true);
});

test('frame by frame or cut anywhere, the set with frames between is identical', () => {
  const all = sparse(taps(1400, 1000, [12, 13, 4]), 3);
  const whole = runSet(SPEC, all);
  fc.assert(
    fc.property(fc.integer({ min: 0, max: all.length }), (cut) => {
      const kept = JSON.parse(JSON.stringify(all)) as Observation[];
      const first = runSet(SPEC, kept.slice(0, cut));
      const second = runSet(SPEC, kept.slice(cut), first.state);
      expect([...first.views, ...second.views]).toEqual(whole.views);
      expect(second.result).toEqual(whole.result);
    }),
    { numRuns: 8 },
  );
});

test('what is shown does not flicker between poses: leg and advice stay, the angle goes on', () => {
  const all = sparse(taps(1400, 1000, [12, 12]), 3);
  const { views } = runSet(SPEC, all);
  views.forEach((view, i) => {
    expect(view.leg).toBe(views[i - (i % 3)]?.leg);
    expect(view.leg).not.toBeNull();
    expect(view.angleDeg).not.toBeNull();
    expect(view.advice).not.toContain('nobody');
  });
  const turned = recording({ lastsMs: 2000, bodyAt: () => sitting({ visibility: 0.1 }), flow: true });
  for (const view of runSet(SPEC, sparse(turned, 3)).views) expect(view.advice).toEqual(['leg-hidden']);
});

test('before the first pose nobody is there, whatever moves', () => {
  const all = recording({ lastsMs: 1000, bodyAt: () => sitting(), flow: true }).map((o) => ({ ...o, landmarks: null }));
  const { views, result } = runSet(SPEC, all);
  expect(views.every((v) => v.angleDeg === null && v.leg === null && v.advice.includes('nobody'))).toBe(true);
  expect(result.framesUsed).toBe(0);
});

test('someone who has left is missed although the motion was looked for', () => {
  const bodyAt = (t: number) =>
    t > 5000 ? null : sitting({ ankleDeg: movementsAt(t, { everyMs: 1200, lastsMs: 800, ranges: [12, 12] }) });
  const all = recording({ lastsMs: 13_000, bodyAt, flow: true }).map((o) => ({ ...o, motion: o.motion ?? NOT_FOLLOWED }));
  const run = runSet(SPEC, all);
  expect(kindsOf(run)).toEqual(['ready', 'rep', 'rep', 'lost', 'ended']);
  expect(run.events.at(-1)).toMatchObject({ why: 'left' });
  expect(run.result).toMatchObject({ count: 2, partialCount: 0 });
});

test('motion alone does not hold a set up for long after the last pose', () => {
  const all = recording({
    lastsMs: 15_000,
    bodyAt: (t) => sitting({ ankleDeg: movementsAt(t, { everyMs: 1200, lastsMs: 800, ranges: [12, 12] }) }),
    flow: true,
  }).map((o) => (o.tMs > 5000 ? { ...o, landmarks: null } : o));
  const run = runSet(SPEC, all);
  expect(kindsOf(run)).toEqual(['ready', 'rep', 'rep', 'lost', 'ended']);
  expect(run.result.framesUsed).toBe(all.filter((o) => o.tMs <= 5000 + MOTION_ALONE_MS).length);
});

test('a part that is not followed leaves the frame between unmeasured', () => {
  const all = sparse(taps(1400, 1000, [12, 12]), 3).map((o) =>
    o.landmarks || !o.motion ? o : { ...o, motion: { ...o.motion, shank: null } },
  );
  const { views, result } = runSet(SPEC, all);
  views.forEach((view, i) => {
    if (i % 3 !== 0) expect(view.angleDeg).toBeNull();
  });
  expect(result.framesUsed).toBe(Math.ceil(all.length / 3));
});

test('frames between belong to the posture of the last pose', () => {
  const seen = (body: BodyPose) => recording({ lastsMs: 3000, bodyAt: () => body, flow: true });
  expect(runSet(specOf(legRaise), sparse(seen(standing()), 3)).result.framesUsed).toBe(0);
  expect(runSet(specOf(legRaise), sparse(seen(lying()), 3)).result.framesUsed).toBe(90);
});

test('the light is judged in the frames with a pose', () => {
  const dark = sparse(recording({ lastsMs: 1000, bodyAt: () => sitting(), flow: true, brightness: 10 }), 3);
  for (const view of runSet(SPEC, dark).views) expect(view.advice).toContain('too-dark');
});
