import type { MeasuredRep } from '../../src/measure/set-result.ts';
import type { ShownSet } from '../../src/screens/services.ts';
import { deg, ms } from '../../src/units.ts';

/** A measured repetition; the n-th begins at 2n seconds. */
export const aRep = (number: number, change: Partial<MeasuredRep> = {}): MeasuredRep => ({
  number,
  startMs: ms(number * 2000),
  peakMs: ms(number * 2000 + 600),
  endMs: ms(number * 2000 + 1200),
  startDeg: deg(1),
  peakDeg: deg(16),
  rangeDeg: deg(15),
  holdMs: ms(200),
  complete: true,
  flags: [],
  uncertaintyDeg: deg(2),
  source: 'fused',
  footDeg: null,
  footUncertaintyDeg: null,
  upMs: null,
  sankAfterMs: null,
  ...change,
});

/** A finished set of these repetitions. */
export function aSet(reps: readonly MeasuredRep[], change: Partial<ShownSet> = {}): ShownSet {
  const complete = reps.filter((rep) => rep.complete);
  const durationMs = ms((reps.length + 1) * 2000);
  return {
    id: 'set-1',
    schema: 2,
    startedAt: '2026-03-01T10:00:00.000Z',
    exercise: 'foot-tap',
    side: 'left',
    targetReps: 10,
    person: 'me',
    source: 'camera',
    model: 'full',
    state: 'finished',
    onDisk: true,
    reps,
    edits: [],
    result: {
      exercise: 'foot-tap',
      side: 'left',
      size: { width: 640, height: 480 },
      frames: 300,
      framesUsed: 300,
      durationMs,
      reps,
      count: complete.length,
      partialCount: reps.length - complete.length,
      summary: complete.length > 0 ? { medianPeakDeg: deg(16), medianRangeDeg: deg(15), uncertaintyDeg: deg(2) } : null,
      kneeLimitDeg: null,
      onset: null,
      glide: null,
      quality: { cameraTurnDeg: deg(3), warnings: [] },
      curve: { tMs: [ms(0), ms(1000), durationMs], angleDeg: [deg(1), null, deg(2)] },
    },
    ...change,
  };
}
