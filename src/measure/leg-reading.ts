import type { LegLines } from '../angles/joint-angle.ts';
import type { Segment } from '../flow/leg-motion.ts';
import { median } from '../signal/median.ts';
import { believedDirections } from './believed-lines.ts';
import { type LegSample, legLines } from './leg-sample.ts';

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
  const tMs = samples.map((s) => s.tMs);
  const read = (segment: Segment) =>
    believedDirections(
      tMs,
      lines.map((l) => l?.[segment] ?? null),
      usualPx[segment],
    );
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
