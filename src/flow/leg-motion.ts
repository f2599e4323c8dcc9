import type { Deg, Ratio } from '../units.ts';

/** The parts of the near leg whose turning is followed in the picture. */
export const SEGMENTS = ['foot', 'shank', 'thigh'] as const;
export type Segment = (typeof SEGMENTS)[number];

/** How far a segment has turned in the picture since the set began, and how far that is to be trusted. */
export interface SegmentTurn {
  /** Clockwise on the screen is positive, measured from the rest picture that `anchor` counts; turns of different anchors do not compare. */
  readonly turnDeg: Deg;
  /** Standard error of `turnDeg` against the anchor. */
  readonly seDeg: Deg;
  /** How alike the anchor's picture and this one are, masked zero-mean normalised cross-correlation, -1 to 1. */
  readonly zncc: Ratio;
  /** Counts the anchors: a change tells that `turnDeg` now leans on another picture. */
  readonly anchor: number;
}

/** The turning of each part; null where it could not be followed. */
export type LegMotion = { readonly [S in Segment]: SegmentTurn | null };
