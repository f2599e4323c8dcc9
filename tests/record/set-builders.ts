import type { MeasuredRep, SetResult } from '../../src/measure/set-result.ts';
import type { RepEdit } from '../../src/record/rep-edit.ts';
import type { SetHeader } from '../../src/record/stored-set.ts';
import type { CalendarDay } from '../../src/symptoms/calendar-day.ts';
import { deg, ms } from '../../src/units.ts';

/** A UUID that says which one it is. */
export const idOf = (n: number): string => `00000000-0000-4000-8000-${String(n).padStart(12, '0')}`;

export const momentOf = (n: number): string => new Date(Date.UTC(2026, 2, 1) + n * 1000).toISOString();

export const header = (over: Partial<SetHeader> = {}): SetHeader => ({
  id: idOf(1),
  schema: 2,
  startedAt: momentOf(0),
  exercise: 'foot-tap',
  side: 'left',
  targetReps: 10,
  person: 'me',
  source: 'camera',
  model: 'full',
  ...over,
});

/** Repetition `number`, two seconds after the one before. */
export const rep = (number: number, over: Partial<MeasuredRep> = {}): MeasuredRep => ({
  number,
  startMs: ms(number * 2000),
  peakMs: ms(number * 2000 + 600.5),
  endMs: ms(number * 2000 + 1200),
  startDeg: deg(1.25),
  peakDeg: deg(16),
  rangeDeg: deg(14.75),
  holdMs: ms(210),
  complete: true,
  flags: [],
  uncertaintyDeg: deg(1.1),
  source: 'fused',
  footDeg: null,
  footUncertaintyDeg: null,
  upMs: null,
  sankAfterMs: null,
  ...over,
});

export const result = (reps: readonly MeasuredRep[]): SetResult => {
  const complete = reps.filter((each) => each.complete);
  return {
    exercise: 'foot-tap',
    side: 'left',
    size: { width: 640, height: 480 },
    frames: 3,
    framesUsed: 2,
    durationMs: ms(66.667),
    reps,
    count: complete.length,
    partialCount: reps.length - complete.length,
    summary: complete.length > 0 ? { medianPeakDeg: deg(16), medianRangeDeg: deg(14.75), uncertaintyDeg: deg(1.1) } : null,
    kneeLimitDeg: null,
    onset: null,
    glide: null,
    quality: { cameraTurnDeg: null, warnings: ['low-frame-rate'] },
    curve: { tMs: [ms(0), ms(33.333), ms(66.667)], angleDeg: [deg(1), null, deg(2.5)] },
  };
};

let made = 0;
/** An edit with an id and a moment of its own. */
export function edit(change: Pick<RepEdit, 'kind'> & { readonly rep?: unknown }, setId = idOf(1)): RepEdit {
  made += 1;
  return { id: idOf(1000 + made), schema: 1, setId, at: momentOf(made), ...change } as RepEdit;
}

/** When a set is taken back. */
export const removedAt = { at: momentOf(7_000_000), day: '2026-05-21' as CalendarDay } as const;
