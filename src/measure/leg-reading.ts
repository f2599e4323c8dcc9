import type { LegLines } from '../angles/joint-angle.ts';
import type { Segment } from '../flow/leg-motion.ts';
import { median } from '../signal/median.ts';
import { unwrappedNear } from '../units.ts';
import { type LegSample, legLines } from './leg-sample.ts';

/**
 * A segment seen shorter or longer than its usual length by these shares is not where its points are: the model has taken hold of the other leg, a chair,
 * nothing. Chosen: a leg that turns to the camera by 30 degrees loses 13 %, perspective adds as much, the model's own jitter stays under 15 %.
 */
const SHORTEST = 0.6;
const LONGEST = 1.6;
/**
 * No limb turns by more than this much and this quickly: points that do have jumped, to the other leg as a rule. Chosen: a ball is kicked with 600 to 900
 * degrees a second at the knee (from memory), an exercise is done with a third of that.
 */
const JUMP_DEG = 20;
const JUMP_DEG_PER_MS = 0.5;
/** Points that have jumped are not believed until they are back where they were, or for this long. Chosen: a raise there and back takes longer. */
const ASTRAY_MS = 1500;

export type SegmentLengths = { readonly [S in Segment]: number };

/** What the landmarks of a set say of the leg, read once for all who ask. */
export interface LegReading {
  /** The median length of each segment in the picture, px; 0 when it was never seen. */
  readonly usualPx: SegmentLengths;
  /** Direction of each segment in each frame, clockwise from the picture's x axis; null when not seen, or not where its points are. */
  readonly directionDeg: { readonly [S in Segment]: readonly (number | null)[] };
  /** Frames with a body in which the points of one of the exercise's segments are not to be believed. */
  readonly stray: readonly boolean[];
}

/** @param segments those that make the exercise's angle */
export function readLeg(samples: readonly LegSample[], segments: readonly Segment[]): LegReading {
  const lines = samples.map(({ points }) => points && legLines(points));
  const usualPx = usualLengths(lines);
  const read = (segment: Segment) => directionsOf(samples, lines, segment, usualPx[segment]);
  const directionDeg = { thigh: read('thigh'), shank: read('shank'), foot: read('foot') };
  const stray = samples.map(
    ({ points, farLeg }, i) => farLeg || (points !== null && segments.some((s) => directionDeg[s][i] === null)),
  );
  return { usualPx, directionDeg, stray };
}

function usualLengths(lines: readonly (LegLines | null)[]): SegmentLengths {
  const [thigh, shank, foot] = (['thigh', 'shank', 'foot'] as const).map(
    (s) => median(lines.flatMap((l) => (l ? [l[s].lengthPx] : []))) ?? 0,
  );
  return { thigh: thigh as number, shank: shank as number, foot: foot as number };
}

function directionsOf(
  samples: readonly LegSample[],
  lines: readonly (LegLines | null)[],
  segment: Segment,
  usualPx: number,
): readonly (number | null)[] {
  let last: { readonly tMs: number; readonly deg: number } | null = null;
  let astray: { readonly sinceMs: number; readonly fromDeg: number } | null = null;
  return lines.map((line, i) => {
    if (!line) return null;
    const { directionDeg, lengthPx } = line[segment];
    if (lengthPx < SHORTEST * usualPx || lengthPx > LONGEST * usualPx) return null;
    const { tMs } = samples[i] as LegSample;
    const turnedFrom = (deg: number) => Math.abs(unwrappedNear(directionDeg, deg) - deg);
    if (astray !== null) {
      if (turnedFrom(astray.fromDeg) <= JUMP_DEG || tMs - astray.sinceMs > ASTRAY_MS) astray = null;
    } else if (last !== null && turnedFrom(last.deg) > JUMP_DEG + JUMP_DEG_PER_MS * (tMs - last.tMs)) {
      astray = { sinceMs: tMs, fromDeg: last.deg };
    }
    last = { tMs, deg: directionDeg };
    return astray === null ? directionDeg : null;
  });
}

/** Share of the frames with a body whose points are not to be believed. */
export function strayShare(samples: readonly LegSample[], { stray }: Pick<LegReading, 'stray'>): number {
  const seen = samples.filter((s) => s.points !== null || s.farLeg).length;
  return seen === 0 ? 0 : stray.filter(Boolean).length / seen;
}

/** Share of the frames with a body in which it is the leg turned away. */
export function farShare(samples: readonly LegSample[]): number {
  const far = samples.filter((s) => s.farLeg).length;
  return far === 0 ? 0 : far / samples.filter((s) => s.points !== null || s.farLeg).length;
}
