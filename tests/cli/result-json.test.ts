import { expect, test } from 'vitest';
import { resultJson } from '../../src/cli/result-json.ts';
import type { SetResult } from '../../src/measure/set-result.ts';
import { deg, ms } from '../../src/units.ts';
import { rep, result } from '../record/set-builders.ts';

const written = (set: SetResult, durationMs = 12_000.4) =>
  JSON.parse(resultJson(set, 'clip.mp4', durationMs)) as Record<string, unknown>;

test('the keys stand in the documented order', () => {
  const value = written(result([rep(1)]));
  expect(Object.keys(value)).toEqual([
    'schemaVersion',
    'exercise',
    'definition',
    'side',
    'source',
    'count',
    'partialCount',
    'reps',
    'summary',
    'footTaps',
    'coordination',
    'kneeLimitDeg',
    'onset',
    'quality',
  ]);
  expect(Object.keys(value.source as object)).toEqual(['file', 'width', 'height', 'durationMs', 'frames', 'framesUsed']);
  expect(Object.keys(value.summary as object)).toEqual(['medianPeakDeg', 'medianRangeDeg', 'uncertaintyDeg']);
  expect(Object.keys(value.quality as object)).toEqual(['cameraTurnDeg', 'warnings']);
  expect(Object.keys((value.reps as object[])[0] as object).slice(0, 10)).toEqual([
    'number',
    'startMs',
    'peakMs',
    'endMs',
    'startDeg',
    'peakDeg',
    'rangeDeg',
    'holdMs',
    'complete',
    'flags',
  ]);
});

test('a set is written with its counts, its source and its repetitions', () => {
  const value = written(result([rep(1), rep(2, { complete: false, flags: ['partial', 'tracking-gap'] })]));
  expect(value).toMatchObject({
    schemaVersion: 1,
    exercise: 'foot-tap',
    side: 'left',
    source: { file: 'clip.mp4', width: 640, height: 480, durationMs: 12_000, frames: 3, framesUsed: 2 },
    count: 1,
    partialCount: 1,
    summary: { medianPeakDeg: 16, medianRangeDeg: 14.75, uncertaintyDeg: 1.1 },
    coordination: null,
    quality: { cameraTurnDeg: null, warnings: ['low-frame-rate'] },
  });
  expect(value.reps).toMatchObject([
    { number: 1, complete: true, flags: [] },
    { number: 2, complete: false, flags: ['partial', 'tracking-gap'] },
  ]);
});

test('times are whole milliseconds and angles hundredths of a degree', () => {
  const [first] = written(result([rep(1, { startMs: ms(1499.6), startDeg: deg(1.23456), peakDeg: deg(-0.001) })])).reps as [
    Record<string, unknown>,
  ];
  expect(first).toMatchObject({ startMs: 1500, startDeg: 1.23, peakDeg: 0 });
  expect(Object.is(first.peakDeg, -0)).toBe(false);
});

test('foot taps tell tempo, hold and fatigue; other exercises and parts that a set is too short for are null', () => {
  const nine = Array.from({ length: 9 }, (_, i) => rep(i + 1, { rangeDeg: deg(i < 6 ? 15 : 9) }));
  const { footTaps } = written(result(nine)) as { footTaps: Record<string, Record<string, unknown>> };
  expect(footTaps.tempo?.perMinute).toBeGreaterThan(0);
  expect(footTaps.fatigue).toMatchObject({ rangeChangeDeg: -6, verdict: 'real' });
  expect(written(result([rep(1)])).footTaps).toMatchObject({ tempo: null, fatigue: null });
  expect(written({ ...result([rep(1)]), exercise: 'leg-raise' }).footTaps).toBeNull();
});

test('a heel stand says how long it lasted and when it sank', () => {
  const stand = rep(1, { upMs: ms(4949.6), sankAfterMs: ms(2850), flags: ['sinking'] });
  const [first] = written({ ...result([stand]), exercise: 'heel-stand' }).reps as [Record<string, unknown>];
  expect(first).toMatchObject({ upMs: 4950, sankAfterMs: 2850, flags: ['sinking'] });
});

test('a leg raise says where the foot stood, which knee limit held and where symptoms began', () => {
  const foot = { footDeg: deg(-4.256), footUncertaintyDeg: deg(12) };
  const onset = { tMs: ms(4200.4), angleDeg: deg(33.333) };
  const value = written({ ...result([rep(1, foot), rep(2)]), kneeLimitDeg: deg(20), onset });
  expect(value).toMatchObject({ kneeLimitDeg: 20, onset: { tMs: 4200, angleDeg: 33.33 } });
  expect(value.reps).toMatchObject([
    { footDeg: -4.26, footUncertaintyDeg: 12 },
    { footDeg: null, footUncertaintyDeg: null },
  ]);
  expect(written({ ...result([]), onset: { tMs: ms(1), angleDeg: null } }).onset).toEqual({ tMs: 1, angleDeg: null });
});

test('a set without complete repetitions has no summary instead of zeros', () => {
  expect(written(result([])).summary).toBeNull();
});

test('the same set gives the same bytes, ending with a line break', () => {
  const set = result([rep(1), rep(2)]);
  expect(resultJson(set, 'a.mp4', 1)).toBe(resultJson(structuredClone(set), 'a.mp4', 1));
  expect(resultJson(set, 'a.mp4', 1).endsWith('}\n')).toBe(true);
});
