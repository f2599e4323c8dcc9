import { holeLimit } from '../signal/hole-limit.ts';
import { median } from '../signal/median.ts';
import { type Deg, deg, type Ms, ms } from '../units.ts';
import { completeThreshold, usualRange } from './complete-threshold.ts';
import { holdTime, NEAR_TOP } from './hold-time.ts';
import { endsMoved, hasHole, isSeen, joinedRuns, type Run } from './joined-runs.ts';
import type { AngleSample, Movement } from './movement.ts';
import type { RepRule } from './rep-rule.ts';
import { type TurningPoint, turningPoints } from './turning-points.ts';

/** A reversal inside a movement (a tremor at the top) that is smaller than this share of the usual range does not part it in two. Chosen. */
const REVERSAL_SHARE = 0.4;
/** A movement begins and ends where this share of its range is left. Chosen. */
const EDGE_SHARE = 0.1;
/** It has come back when it has fallen by this share of its rise, or of the usual range where that is less. Chosen. */
const RETURN_SHARE = 0.5;
/** The rest before a movement is the median over this time, ms. Chosen. */
const REST_MS = 300;

/** A movement as found. */
export interface FoundMovement extends Movement {
  /** How long it stayed near the top, coming to rest and leaving included. */
  readonly nearTopMs: Ms;
  /** Whether it came back, most of the way. */
  readonly returned: boolean;
  /** Whether the samples began, broke off or ended while it was under way: its range is at least what is told, its times are unsure. */
  readonly cut: boolean;
}

/**
 * Finds the movements of a finished set, with thresholds relative to the person's own range in it.
 * @param samples smoothed without lag, positive in the direction of the exercise. A null parts runs, and so does a pause between samples that is
 *   longer than `holeLimit` of them: a movement crosses a gap only where `joinedRuns` and `isSeen` say so.
 * @returns all movements in order of time, complete and partial; one that did not come back is never complete
 */
export function segmentSet(samples: readonly AngleSample[], rule: RepRule): readonly FoundMovement[] {
  const runs = joinedRuns(runsOf(samples, rule), rule.noticeDeg);
  const noticed = movementsOf(runs, rule.noticeDeg, Number.POSITIVE_INFINITY);
  const usual = usualRange(noticed.map((m) => m.rangeDeg)) ?? 0;
  const reversal = Math.max(rule.noticeDeg, REVERSAL_SHARE * usual);
  const main = movementsOf(runs, reversal, usual);
  const all = [...main, ...apartFrom(main, noticed)].sort((a, b) => a.startMs - b.startMs);
  const threshold = completeThreshold(
    all.map((m) => m.rangeDeg),
    rule,
  );
  return all
    .filter((m) => m.endMs - m.startMs >= rule.leastMs)
    .map((m) => ({ ...m, complete: m.returned && m.rangeDeg >= threshold }));
}

/** Those of `others` that overlap none of `main`; both in order of time. */
function apartFrom(main: readonly FoundMovement[], others: readonly FoundMovement[]): readonly FoundMovement[] {
  let next = 0;
  return others.filter((other) => {
    while (next < main.length && (main[next] as FoundMovement).endMs <= other.startMs) next++;
    const nearest = main[next];
    return !nearest || nearest.startMs >= other.endMs;
  });
}

function runsOf(samples: readonly AngleSample[], { leastMs }: RepRule): readonly Run[] {
  const limit = holeLimit(
    samples.map((s) => s.tMs),
    leastMs,
  );
  const runs: { tMs: number[]; deg: number[]; afterHoles: number[] }[] = [];
  let open: { tMs: number[]; deg: number[] } | null = null;
  let lastMs = Number.NEGATIVE_INFINITY;
  for (const { tMs, deg: value } of samples) {
    if (value === null) {
      open = null;
      continue;
    }
    if (tMs - lastMs > limit) open = null;
    lastMs = tMs;
    if (!open) {
      const run = { tMs: [], deg: [], afterHoles: [] };
      runs.push(run);
      open = run;
    }
    open.tMs.push(tMs);
    open.deg.push(value);
  }
  return runs;
}

function movementsOf(runs: readonly Run[], reversal: number, usual: number): readonly FoundMovement[] {
  return runs.flatMap((run, i) => {
    const last = runs[i - 1];
    const points = turningPoints(run.deg, reversal);
    const found = points.flatMap((point, k) => {
      const before = points[k - 1];
      return point.kind === 'peak' && before ? [movementAt(run, [before, point, points[k + 1]], usual)] : [];
    });
    const [first, valley] = points;
    // A gap hid how it rose; where it rose before the gap, it is named there.
    const hidden = last && first?.kind === 'peak' && valley && !endsMoved(last, reversal);
    return hidden ? [comingBack(run, first, valley), ...found] : found;
  });
}

/** A movement of which only the way back was seen: named, never counted. */
function comingBack(run: Run, peak: TurningPoint, after: TurningPoint): FoundMovement {
  const end = firstAtMost(run, after.value + EDGE_SHARE * (peak.value - after.value), peak.index, after.index);
  return {
    startMs: ms(run.tMs[0] as number),
    peakMs: ms(run.tMs[peak.index] as number),
    endMs: ms(run.tMs[end] as number),
    startDeg: deg(after.value),
    peakDeg: deg(peak.value),
    rangeDeg: deg(peak.value - after.value),
    holdMs: ms(0),
    nearTopMs: ms(0),
    complete: false,
    returned: false,
    cut: true,
  };
}

type Turns = readonly [before: TurningPoint, peak: TurningPoint, after: TurningPoint | undefined];

function movementAt(run: Run, [before, peak, after]: Turns, usual: number): FoundMovement {
  const rise = peak.value - before.value;
  const startIndex = lastAtMost(run, before.value + EDGE_SHARE * rise, before.index, peak.index);
  const startDeg = restBefore(run, before.index, startIndex);
  const rangeDeg = Math.max(0, peak.value - startDeg);
  const endIndex = after
    ? firstAtMost(run, after.value + EDGE_SHARE * (peak.value - after.value), peak.index, after.index)
    : run.deg.length - 1;
  const broken = hasHole(run, startIndex, endIndex);
  // Less than the live count waits for: what was shown as counted is back here too, wherever the set is stopped.
  const back = after !== undefined && peak.value - after.value >= RETURN_SHARE * Math.min(rise, usual);
  const returned = back && (!broken || isSeen(run, before, peak, after));
  const nearTopMs = timeAround(run, peak, peak.value - NEAR_TOP * rangeDeg);
  const at = (index: number): Ms => ms(run.tMs[index] as number);
  return {
    startMs: at(startIndex),
    peakMs: at(peak.index),
    endMs: at(endIndex),
    startDeg,
    peakDeg: deg(peak.value),
    rangeDeg: deg(rangeDeg),
    holdMs: holdTime(nearTopMs, at(endIndex) - at(startIndex) - nearTopMs, 1 - EDGE_SHARE),
    nearTopMs,
    complete: false,
    returned,
    cut: broken || startIndex === 0 || !after || (!returned && after.index === run.deg.length - 1),
  };
}

const lastAtMost = (run: Run, limit: number, from: number, to: number): number => {
  let index = to;
  while (index > from && (run.deg[index] as number) > limit) index--;
  return index;
};

const firstAtMost = (run: Run, limit: number, from: number, to: number): number => {
  let index = from;
  while (index < to && (run.deg[index] as number) > limit) index++;
  return index;
};

/**
 * Median over the rest just before a movement, from the valley on. A slow movement is on its way by then: a raise of 1.5 s to the top reads its
 * rest high by about a fortieth of its range.
 */
function restBefore(run: Run, valley: number, start: number): Deg {
  const since = (run.tMs[start] as number) - REST_MS;
  const rest: number[] = [];
  for (let i = start; i >= valley && (run.tMs[i] as number) >= since; i--) rest.push(run.deg[i] as number);
  return deg(median(rest) ?? (run.deg[start] as number));
}

function timeAround(run: Run, peak: TurningPoint, limit: number): Ms {
  let from = peak.index;
  let to = peak.index;
  while (from > 0 && (run.deg[from - 1] as number) >= limit) from--;
  while (to < run.deg.length - 1 && (run.deg[to + 1] as number) >= limit) to++;
  return ms((run.tMs[to] as number) - (run.tMs[from] as number));
}
