import type { Deg, Ratio } from '../units.ts';
import type { Point, SegmentShape } from './segment-shape.ts';

/** What one picture says of a segment; `seDeg` is the standard error of the turn against the rest picture. */
export interface SegmentSighting {
  readonly turnDeg: Deg;
  readonly seDeg: Deg;
  readonly zncc: Ratio;
}

/** Where the joint that a segment hangs on is expected, and whether a neighbour's own motion says so. */
export interface ExpectedJoint extends Point {
  readonly sure: boolean;
}

/** What is known of a segment in a frame before its picture is looked at. */
export interface SegmentHints {
  /** Where the landmarks see it; null when this frame has none. */
  readonly seen: SegmentShape | null;
  /** The joint nearer the hip; null when nothing tells. */
  readonly joint: ExpectedJoint | null;
  /** How far the neighbour nearer the hip has just turned; null when unknown. */
  readonly carrierTurnDeg: number | null;
}
