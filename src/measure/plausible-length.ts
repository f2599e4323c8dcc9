import { SEGMENTS, type Segment } from '../flow/leg-motion.ts';
import { median } from '../signal/median.ts';
import { type LegSample, legLines } from './leg-sample.ts';

/**
 * A segment seen shorter or longer than its usual length by these shares is not where its points are: the model has taken hold of the other leg, a chair,
 * nothing. Chosen: a leg that turns to the camera by 30 degrees loses 13 %, perspective adds as much, the model's own jitter stays under 15 %.
 */
const SHORTEST = 0.6;
const LONGEST = 1.6;

export type SegmentLengths = { readonly [S in Segment]: number };

/** The median length of each segment in the picture, px; 0 when it was never seen. */
export function usualLengths(samples: readonly LegSample[]): SegmentLengths {
  const lines = samples.flatMap(({ points }) => (points ? [legLines(points)] : []));
  const of = (segment: Segment) => median(lines.map((l) => l[segment].lengthPx)) ?? 0;
  return { thigh: of('thigh'), shank: of('shank'), foot: of('foot') };
}

/** Whether a length can be the segment's. */
export const plausible = (lengthPx: number, usualPx: number): boolean =>
  lengthPx >= SHORTEST * usualPx && lengthPx <= LONGEST * usualPx;

/** Share of the frames with a body in which one of the segments has no plausible length. */
export function jumpedShare(samples: readonly LegSample[], segments: readonly Segment[] = SEGMENTS): number {
  const usual = usualLengths(samples);
  const seen = samples.flatMap(({ points }) => (points ? [legLines(points)] : []));
  const jumped = seen.filter((lines) => segments.some((s) => !plausible(lines[s].lengthPx, usual[s])));
  return seen.length === 0 ? 0 : jumped.length / seen.length;
}
