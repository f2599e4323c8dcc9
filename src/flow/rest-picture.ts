import type { Ms } from '../units.ts';
import { boundsOf } from './capsule-mask.ts';
import { type Crop, cropOf, type Grey, type Rect } from './grey.ts';
import { outermost, type SegmentShape, shapeDirection, shapeLength } from './segment-shape.ts';

/** A segment must hold still for this long before its picture becomes the rest picture. Chosen. */
const STILL_MS = 300;
/** Still: the landmarks moved by less than this share of the segment's length and turned by less than this. Chosen above their jitter. */
const STILL_SHARE = 0.06;
const STILL_DEG = 5;
/** Where nobody holds still, the picture after this time serves. Chosen. */
const PATIENCE_MS = 2500;
/** The same of a leg that is held up: it is still, but in dim light its points never are, and the first movement must not be waited into. Chosen. */
const HELD_PATIENCE_MS = 800;
/** Points that jump are not taken where they lie further than this share of a held segment's length from where they usually do, or change its length by as much. Chosen. */
const USUAL_SHARE = 0.12;
/** Room around the segment in a crop, px: the aligner's reach and the coarsest level's filter. */
export const MARGIN_PX = 20;

/** A picture of a segment at rest and where the landmarks see it there. */
export interface RestPicture {
  readonly crop: Crop;
  readonly shape: SegmentShape;
}

interface Stay {
  readonly sinceMs: number;
  readonly shape: SegmentShape;
  readonly rect: Rect;
  readonly sum: Float32Array;
  count: number;
}

/** Waits until a segment holds still and takes the mean of its pictures meanwhile: less noise than one. */
export class RestWatch {
  private stay: Stay | null = null;
  private readonly sinceMs: number;
  private readonly held: boolean;
  /** Where the segment has been seen; of a held one only. */
  private readonly seen: SegmentShape[] = [];

  /** @param held whether it belongs to a leg that is held still beside the other one */
  constructor(tMs: Ms, held = false) {
    this.sinceMs = tMs;
    this.held = held;
  }

  /** Looks at the next frame; returns the rest picture once there is one. */
  look(picture: Grey, shape: SegmentShape, tMs: Ms): RestPicture | null {
    if (this.held) this.seen.push(shape);
    if (!this.stay || !alike(this.stay.shape, shape)) {
      const rect = boundsOf(outermost(shape), MARGIN_PX);
      const crop = cropOf(picture, rect);
      this.stay = crop ? { sinceMs: tMs, shape, rect, sum: new Float32Array(crop.data), count: 1 } : null;
    } else {
      const crop = cropOf(picture, this.stay.rect);
      if (crop && crop.data.length === this.stay.sum.length) {
        for (let i = 0; i < crop.data.length; i++) this.stay.sum[i] = (this.stay.sum[i] as number) + (crop.data[i] as number);
        this.stay.count++;
      }
    }
    const { stay } = this;
    if (!stay || (tMs - stay.sinceMs < STILL_MS && !this.waitedFor(stay.shape, tMs))) return null;
    const crop = cropOf(picture, stay.rect);
    if (!crop || crop.data.length !== stay.sum.length) return null;
    return { crop: { ...crop, data: Uint8Array.from(stay.sum, (v) => Math.round(v / stay.count)) }, shape: stay.shape };
  }

  /** Whether stillness has been waited for long enough, so that this shape serves. */
  private waitedFor(shape: SegmentShape, tMs: Ms): boolean {
    const waitedMs = tMs - this.sinceMs;
    if (!this.held || waitedMs >= PATIENCE_MS) return waitedMs >= PATIENCE_MS;
    const usual = (of: (seen: SegmentShape) => number): number => middleOf(this.seen.map(of));
    const length = usual(shapeLength);
    const away = Math.hypot(shape.joint.x - usual((s) => s.joint.x), shape.joint.y - usual((s) => s.joint.y));
    const changed = Math.abs(shapeLength(shape) - length);
    return waitedMs >= HELD_PATIENCE_MS && Math.max(away, changed) <= USUAL_SHARE * length;
  }
}

const middleOf = (values: readonly number[]): number => [...values].sort((a, b) => a - b)[values.length >> 1] as number;

function alike(a: SegmentShape, b: SegmentShape): boolean {
  const moved = Math.max(Math.hypot(a.from.x - b.from.x, a.from.y - b.from.y), Math.hypot(a.to.x - b.to.x, a.to.y - b.to.y));
  const turned = Math.abs(shapeDirection(a) - shapeDirection(b)) * (180 / Math.PI);
  return moved < STILL_SHARE * shapeLength(b) && Math.min(turned, 360 - turned) < STILL_DEG;
}
