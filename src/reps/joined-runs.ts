import { LIVE_GAP_MS } from './live-counter.ts';
import { turningPoints } from './turning-points.ts';

/** Samples in a row. */
export interface Run {
  readonly tMs: readonly number[];
  readonly deg: readonly number[];
  /** Indices of the samples that come after a hole. */
  readonly afterHoles: readonly number[];
}

/** At rest: not risen by more than this share of a movement. Chosen, as where movements begin. */
const EDGE_SHARE = 0.1;
/** Of the way up or of the way back this share of the rise must have been seen: what lies in a hole may also be a jump of the level. Chosen. */
const SEEN_SHARE = 0.5;

/**
 * Joins runs over holes of up to LIVE_GAP_MS in the midst of a movement: up before and down after it, the joint came back, and down before and up after it rose.
 * A hole between two rests joins nothing, at whatever level the second one is.
 * @param runs in order of time
 * @param reversal how far a movement goes at least, same unit as the samples, > 0
 */
export function joinedRuns(runs: readonly Run[], reversal: number): readonly Run[] {
  const joined: Run[] = [];
  for (const next of runs) {
    const open = joined.at(-1);
    const holeMs = open ? (next.tMs[0] as number) - (open.tMs.at(-1) as number) : Number.POSITIVE_INFINITY;
    if (!open || holeMs > LIVE_GAP_MS || !(endsMoved(open, reversal) || beginsMoved(next, reversal))) {
      joined.push(next);
      continue;
    }
    joined[joined.length - 1] = {
      tMs: [...open.tMs, ...next.tMs],
      deg: [...open.deg, ...next.deg],
      afterHoles: [...open.afterHoles, open.deg.length, ...next.afterHoles.map((i) => i + open.deg.length)],
    };
  }
  return joined;
}

/** Whether a run ends away from where its last movement began. */
export function endsMoved({ deg }: Run, reversal: number): boolean {
  const points = turningPoints(deg, reversal);
  const peak = points.findLastIndex((p) => p.kind === 'peak');
  const before = points[peak - 1];
  return before !== undefined && (deg.at(-1) as number) - before.value >= reversal;
}

/** Whether a run begins with a way back, or in the midst of a way up. */
function beginsMoved({ deg }: Run, reversal: number): boolean {
  const [first, second] = turningPoints(deg, reversal);
  if (!first || first.kind === 'peak') return first !== undefined;
  if (!second || first.index > 0) return false;
  const edge = first.value + EDGE_SHARE * (second.value - first.value);
  return deg.slice(1, second.index).every((x) => x > edge);
}

interface Turn {
  readonly index: number;
  readonly value: number;
}

/** Whether a movement has a hole within. */
export const hasHole = ({ afterHoles }: Run, from: number, to: number): boolean => afterHoles.some((i) => i > from && i <= to);

/** Whether enough of a movement was seen outside of its holes to be sure that there was one: of its way up, or of its way back. */
export function isSeen(run: Run, before: Turn, peak: Turn, after: Turn | undefined): boolean {
  const rise = peak.value - before.value;
  const inHoles = (from: number, to: number): number =>
    run.afterHoles
      .filter((i) => i > from && i <= to)
      .reduce((sum, i) => sum + (run.deg[i] as number) - (run.deg[i - 1] as number), 0);
  const seenUp = rise - inHoles(before.index, peak.index);
  const seenBack = after ? peak.value - after.value + inHoles(peak.index, after.index) : 0;
  return Math.max(seenUp, seenBack) >= SEEN_SHARE * rise;
}
