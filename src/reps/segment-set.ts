import { median } from '../signal/median.ts';
import { type Deg, deg, type Ms, ms } from '../units.ts';
import { completeThreshold, usualRange } from './complete-threshold.ts';
import type { AngleSample, Movement } from './movement.ts';
import type { RepRule } from './rep-rule.ts';
import { type TurningPoint, turningPoints } from './turning-points.ts';

/** A reversal inside a movement (a tremor at the top) that is smaller than this share of the usual range does not part it in two. Chosen. */
const REVERSAL_SHARE = 0.3;
/** A movement begins and ends where this share of its range is left. Chosen. */
const EDGE_SHARE = 0.1;
/** It has come back when it has fallen by this share of its rise. Chosen. */
const RETURN_SHARE = 0.5;
/** Within this share of the range from the peak, the joint is held. Chosen. */
const HOLD_SHARE = 0.1;
/** The rest before a movement is the median over this time, ms. Chosen. */
const REST_MS = 300;

/** A movement as found, and whether it came back before the samples ended or broke off. */
export interface FoundMovement extends Movement {
  readonly returned: boolean;
}

interface Run {
  readonly tMs: readonly number[];
  readonly deg: readonly number[];
}

/**
 * Finds the movements of a finished set, with thresholds relative to the person's own range in it.
 * @param samples smoothed without lag, positive in the direction of the exercise; null parts runs: no movement crosses a gap
 * @returns all movements in order of time, complete and partial; one that did not come back is never complete
 */
export function segmentSet(samples: readonly AngleSample[], rule: RepRule): readonly FoundMovement[] {
  const runs = runsOf(samples);
  const noticed = runs.flatMap((run) => movementsIn(run, rule.noticeDeg));
  const usual = usualRange(noticed.map((m) => m.rangeDeg)) ?? 0;
  const main = runs.flatMap((run) => movementsIn(run, Math.max(rule.noticeDeg, REVERSAL_SHARE * usual)));
  const small = noticed.filter((n) => !main.some((m) => n.startMs < m.endMs && n.endMs > m.startMs));
  const all = [...main, ...small].sort((a, b) => a.startMs - b.startMs);
  const threshold = completeThreshold(
    all.map((m) => m.rangeDeg),
    rule,
  );
  return all
    .filter((m) => m.endMs - m.startMs >= rule.leastMs)
    .map((m) => ({ ...m, complete: m.returned && m.rangeDeg >= threshold }));
}

function runsOf(samples: readonly AngleSample[]): readonly Run[] {
  const runs: { tMs: number[]; deg: number[] }[] = [];
  let open: { tMs: number[]; deg: number[] } | null = null;
  for (const { tMs, deg: value } of samples) {
    if (value === null) {
      open = null;
      continue;
    }
    if (!open) {
      open = { tMs: [], deg: [] };
      runs.push(open);
    }
    open.tMs.push(tMs);
    open.deg.push(value);
  }
  return runs;
}

function movementsIn(run: Run, reversal: number): readonly FoundMovement[] {
  const points = turningPoints(run.deg, reversal);
  return points.flatMap((point, i) => {
    const before = points[i - 1];
    return point.kind === 'peak' && before ? [movementAt(run, before, point, points[i + 1])] : [];
  });
}

function movementAt(run: Run, before: TurningPoint, peak: TurningPoint, after: TurningPoint | undefined): FoundMovement {
  const rise = peak.value - before.value;
  const startIndex = lastAtMost(run, before.value + EDGE_SHARE * rise, before.index, peak.index);
  const startDeg = restBefore(run, before.index, startIndex);
  const rangeDeg = Math.max(0, peak.value - startDeg);
  const endIndex = after
    ? firstAtMost(run, after.value + EDGE_SHARE * (peak.value - after.value), peak.index, after.index)
    : run.deg.length - 1;
  const at = (index: number): Ms => ms(run.tMs[index] as number);
  return {
    startMs: at(startIndex),
    peakMs: at(peak.index),
    endMs: at(endIndex),
    startDeg,
    peakDeg: deg(peak.value),
    rangeDeg: deg(rangeDeg),
    holdMs: holdAround(run, peak, peak.value - HOLD_SHARE * rangeDeg),
    complete: false,
    returned: after !== undefined && peak.value - after.value >= RETURN_SHARE * rise,
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

/** Median over the rest just before a movement, from the valley on. */
function restBefore(run: Run, valley: number, start: number): Deg {
  const since = (run.tMs[start] as number) - REST_MS;
  const rest: number[] = [];
  for (let i = start; i >= valley && (run.tMs[i] as number) >= since; i--) rest.push(run.deg[i] as number);
  return deg(median(rest) ?? (run.deg[start] as number));
}

function holdAround(run: Run, peak: TurningPoint, limit: number): Ms {
  let from = peak.index;
  let to = peak.index;
  while (from > 0 && (run.deg[from - 1] as number) >= limit) from--;
  while (to < run.deg.length - 1 && (run.deg[to + 1] as number) >= limit) to++;
  return ms((run.tMs[to] as number) - (run.tMs[from] as number));
}
