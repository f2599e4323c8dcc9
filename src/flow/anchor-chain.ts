import { type Anchor, laterAnchor, type Match } from './segment-anchor.ts';
import type { SegmentShape } from './segment-shape.ts';
import type { Sight } from './sight.ts';

/** A neighbour takes over when it is nearer by this much, so that the anchor does not flicker. Chosen. */
const ANCHOR_HYSTERESIS_DEG = 2;
/** A new anchor is only made from a picture that is itself this sure. Chosen. */
const ANCHOR_ZNCC = 0.8;
/** Anchors kept at most: 24 of them span 270 degrees. */
const MOST_ANCHORS = 24;

/** The pictures of one segment that later ones are compared with: the one at rest, and stepping stones on the way it has turned since. */
export class AnchorChain {
  readonly first: Anchor;
  private readonly anchors: Anchor[];
  private current: Anchor;

  constructor(first: Anchor) {
    this.first = first;
    this.anchors = [first];
    this.current = first;
  }

  /** The anchor whose turn is nearest, the present one unless another is clearly nearer. */
  nearest(turnDeg: number): Anchor {
    const apart = (a: Anchor) => Math.abs(a.place.turnDeg - turnDeg);
    const nearest = this.anchors.reduce((best, a) => (apart(a) < apart(best) ? a : best));
    return apart(nearest) + ANCHOR_HYSTERESIS_DEG < apart(this.current) ? nearest : this.current;
  }

  /** The segment was last found by this one. */
  use(anchor: Anchor): void {
    this.current = anchor;
  }

  /** Makes a new anchor of a picture in which the segment was found, where that is far enough from the others and sure. */
  extend(found: Match, rest: SegmentShape, sight: Sight): void {
    const { place, anchor, alignment } = found;
    const far = Math.abs(place.turnDeg - anchor.place.turnDeg) >= rest.anchorSpacingDeg;
    if (!far || this.anchors.length >= MOST_ANCHORS || alignment.keptZncc < ANCHOR_ZNCC || !alignment.converged) return;
    const made = laterAnchor(sight, rest, this.first.place, found);
    if (!made) return;
    this.current = made;
    this.anchors.push(made);
  }
}
