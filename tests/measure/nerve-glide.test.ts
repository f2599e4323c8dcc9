import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { nerveGlide } from '../../src/exercises/nerve-glide.ts';
import type { Observation } from '../../src/measure/observation.ts';
import { finishSet, markOnset, type SetSpec, startSet, stepSet } from '../../src/measure/set.ts';
import { LANDMARK } from '../../src/pose/landmarks.ts';
import { decodeRecording } from '../../src/record/recording.ts';
import { deg, ms, px, ratio } from '../../src/units.ts';
import { truthOf } from '../clips/truth.ts';
import { lying, recording, specOf } from './pose-builder.ts';
import { kindsOf, runSet } from './set-runner.ts';

function watched(id: string): { readonly spec: SetSpec; readonly observations: readonly Observation[] } {
  const decoded = decodeRecording(readFileSync(join(import.meta.dirname, `../../recordings/${id}.json`), 'utf8'));
  if (!decoded.ok) throw new Error(`${id} can't be read: ${decoded.error.kind}`);
  const { side, source, observations } = decoded.value;
  return { spec: { exercise: nerveGlide, side, size: source, targetReps: null, endsItself: true }, observations };
}
const slides = watched('glide-left-sliding');
const tensions = watched('glide-right-tension');

describe.each([
  { id: 'glide-left-sliding', pattern: 'slide', ...slides },
  { id: 'glide-right-tension', pattern: 'tension', ...tensions },
])('$id', ({ id, pattern, spec, observations }) => {
  const run = runSet(spec, observations);
  const truth = truthOf(id);
  const { glide } = run.result;

  test('is what it is, cycle by cycle, also while it runs', () => {
    const all = truth.reps.map(() => pattern);
    expect(glide?.pattern).toBe(pattern);
    expect(glide?.cycles.map((c) => c.pattern)).toEqual(all);
    expect(run.events.flatMap((e) => (e.kind === 'glide' ? [e.cycle.pattern] : []))).toEqual(all);
    expect(glide?.slideShare).toBe(pattern === 'slide' ? 1 : 0);
    expect(run.views.at(-1)?.glide?.pattern).toBe(pattern);
  });

  test('a cycle is told within 1.5 s of its end', () => {
    run.events.forEach((e) => {
      if (e.kind === 'glide') expect(e.tMs - e.cycle.endMs).toBeLessThan(1500);
    });
  });

  test('the wrong way round is told once, the right one never', () => {
    expect(kindsOf(run).filter((kind) => kind === 'glide-wrong')).toHaveLength(pattern === 'tension' ? 1 : 0);
    expect(kindsOf(run)).not.toContain('glide-trouble');
    expect(kindsOf(run)).not.toContain('hand');
  });

  test('ranges and elevation are the true ones within their errors', () => {
    const necks = truth.frames.map((f) => f.neckDeg ?? Number.NaN);
    const neck = Math.max(...necks) - Math.min(...necks);
    expect(Math.abs((glide?.headRangeDeg ?? Number.NaN) - neck)).toBeLessThan(glide?.headUncertaintyDeg ?? Number.NaN);
    expect(Math.abs((glide?.footRangeDeg ?? Number.NaN) - 33.5)).toBeLessThan(3);
    const elevation = Math.max(...truth.frames.map((f) => f.legElevationDeg));
    expect(Math.abs((glide?.legHeld?.medianDeg ?? Number.NaN) - elevation)).toBeLessThan(
      glide?.legHeld?.uncertaintyDeg ?? Number.NaN,
    );
    expect(glide?.legHeld?.limitFrom).toBe('held');
  });
});

/** Without the landmarks of the head from `fromMs` on. */
const headHidden = (observations: readonly Observation[], fromMs: number) =>
  observations.map((seen) =>
    seen.tMs < fromMs || !seen.landmarks
      ? seen
      : { ...seen, landmarks: seen.landmarks.map((p, i) => (i <= LANDMARK.rightEar ? { ...p, visibility: ratio(0.1) } : p)) },
  );

test('a hidden head leaves cycles unclear and is told once; the foot is counted all the same', () => {
  const run = runSet(slides.spec, headHidden(slides.observations, 0));
  expect(run.result.count).toBe(6);
  expect(run.result.glide).toMatchObject({ pattern: 'unclear', headRangeDeg: null, headUncertaintyDeg: null });
  expect(run.result.glide?.cycles.map((c) => c.reason)).toEqual(Array(6).fill('head-hidden'));
  expect(run.events.filter((e) => e.kind === 'glide-trouble')).toMatchObject([{ what: 'head-hidden' }]);
  expect(run.views.at(-1)?.glide?.headDeg).toBeNull();
});

test('where only every fourth picture is posed it is the same', () => {
  const seldom = slides.observations.map((seen, i) => (i % 4 === 0 ? seen : { ...seen, landmarks: null }));
  const { result } = runSet(slides.spec, seldom);
  expect(result.count).toBe(6);
  expect(result.glide?.cycles.map((c) => c.pattern)).toEqual(Array(6).fill('slide'));
});

test('where hardly a picture is posed the head is said to be seen too seldom, not to be hidden; the foot is counted all the same', () => {
  let posedMs = Number.NEGATIVE_INFINITY;
  const rare = slides.observations.map((seen) => {
    // As the set begins it is found ready as usual.
    if (seen.tMs > 1500 && seen.tMs - posedMs < 2000) return { ...seen, landmarks: null };
    posedMs = seen.tMs;
    return seen;
  });
  const { result, events } = runSet(slides.spec, rare);
  expect(result.count).toBe(6);
  expect(new Set(result.glide?.cycles.map((c) => c.reason))).toEqual(new Set(['head-seldom']));
  expect(events.filter((e) => e.kind === 'glide-trouble')).toMatchObject([{ what: 'head-seldom' }]);
});

test('a foot whose points jump until its motion is followed, just before it moves, has a first glide as large as the others', () => {
  const jumps = new Set<number>([LANDMARK.leftHeel, LANDMARK.leftToe]);
  const late = slides.observations.map((seen, i) =>
    seen.tMs >= 1250 || !seen.landmarks
      ? seen
      : {
          ...seen,
          motion: null,
          landmarks: seen.landmarks.map((p, k) =>
            jumps.has(k) ? { ...p, y: px(p.y + (k === LANDMARK.leftToe ? 14 : -14) * (i % 2)) } : p,
          ),
        },
  );
  const { reps } = runSet({ ...slides.spec, endsItself: false }, late).result;
  const ranges = reps.map((rep) => rep.rangeDeg);
  expect(ranges).toHaveLength(6);
  expect(Math.abs((ranges[0] ?? 0) - (ranges[1] ?? 0))).toBeLessThan(1.5);
});

describe('the limit', () => {
  test('a leg above a marked one is not begun with', () => {
    const run = runSet({ ...slides.spec, elevationLimitDeg: deg(35) }, slides.observations);
    expect(kindsOf(run)).not.toContain('ready');
    expect(run.views.at(-1)?.advice).toContain('leg-too-high');
  });

  test('a marked one above it is shown and kept in the result', () => {
    const run = runSet({ ...slides.spec, elevationLimitDeg: deg(60) }, slides.observations);
    expect(run.views.at(-1)?.glide?.limitDeg).toBe(60);
    expect(run.result.glide).toMatchObject({ stopped: null, legHeld: { limitDeg: 60, limitFrom: 'marked' } });
  });

  const body = (thighDeg: number) => lying({ thighDeg, ankleDeg: 0 });
  test('a flat leg is not begun with', () => {
    const run = runSet(specOf(nerveGlide), recording({ lastsMs: 3000, bodyAt: () => body(3), flow: true }));
    expect(kindsOf(run)).toEqual([]);
    expect(run.views.at(-1)?.advice).toEqual(['leg-not-held']);
  });

  test.each([
    ['12 degrees above where it was held ends the set, told once', 12, ['ready', 'ended'], 'above-limit'],
    ['a few degrees, as a strap gives, does not', 3, ['ready'], null],
  ] as const)('a leg that rises by %s', (_, byDeg, kinds, stopped) => {
    // Held for four seconds, then it rises for three.
    const bodyAt = (tMs: number) => body(45 + byDeg * Math.min(1, Math.max(0, (tMs - 4000) / 3000)));
    const spec = { ...specOf(nerveGlide), endsItself: true };
    const run = runSet(spec, recording({ lastsMs: 12_000, bodyAt, flow: true }));
    expect(kindsOf(run).filter((kind) => !kind.startsWith('glide'))).toEqual(kinds);
    expect(run.result.glide?.stopped).toBe(stopped);
    for (const e of run.events) {
      if (e.kind !== 'ended') continue;
      expect(e.why).toBe('above-limit');
      expect(e.tMs).toBeGreaterThan(5500);
      expect(e.tMs).toBeLessThan(9000);
    }
  });
});

test('rising symptoms end the set with the next frame, and it says so', () => {
  let state = startSet(slides.spec);
  const ended: { readonly why: string; readonly tMs: number }[] = [];
  for (const seen of slides.observations) {
    const step = stepSet(state, seen);
    state = step.state;
    for (const e of step.events) if (e.kind === 'ended') ended.push({ why: e.why, tMs: seen.tMs });
    if (seen.tMs === 8000) state = markOnset(state, ms(8000));
    if (state.phase === 'ended') break;
  }
  expect(ended).toEqual([{ why: 'symptoms', tMs: 8050 }]);
  const result = finishSet(state);
  expect(result.glide?.stopped).toBe('symptoms');
  expect(result.count).toBe(3);
});

test('other exercises have no glide', () => {
  const { spec, observations } = slides;
  const run = runSet({ ...spec, exercise: { ...nerveGlide, id: 'foot-tap' } }, observations.slice(0, 60));
  expect(run.result.glide).toBeNull();
  expect(run.views.at(-1)?.glide).toBeNull();
});
