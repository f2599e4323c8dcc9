import { type Deg, deg, px, type Ratio, radOfDeg, ratio } from '../units.ts';
import { capsuleMask } from './capsule-mask.ts';
import type { Crop } from './grey.ts';
import { alignPatch, type PatchAlignment } from './patch-alignment.ts';
import { fitLight, sampleTemplate } from './patch-sampling.ts';
import { type PatchTemplate, prepareTemplate, type TemplateLevel } from './patch-template.ts';
import { movedPoint, type PlaneMotion } from './plane-motion.ts';
import { buildPyramid, type Pyramid, type PyramidLevel } from './pyramid.ts';
import { searchRotation } from './rotation-search.ts';
import { type Capsule, type Point, type SegmentShape, shapeDirection, shapeLength } from './segment-shape.ts';

/** A new anchor is made where the nearest one is further away than this. Chosen: a side view of a limb still looks alike after 18 degrees
 *  (correlation 0.85 and more), and a leg raised by 80 degrees needs four links only. */
export const ANCHOR_SPACING_DEG = 18;
/** A neighbour takes over when it is nearer by this much, so that the anchor does not flicker. Chosen. */
const ANCHOR_HYSTERESIS_DEG = 3;
/** Below this correlation the segment was not found. Chosen: other parts of a picture reach 0.4 by chance, the segment itself seldom falls under 0.7. */
export const FOUND_ZNCC = 0.7;
/** From here on a match is taken without trying the other guesses. Chosen. */
const SURE_ZNCC = 0.9;
/** A new anchor is only made from a picture that is itself this sure. Chosen. */
const ANCHOR_ZNCC = 0.85;
/** The landmarks may disagree with the picture by this much before the picture's answer is doubted and checked: their own error, see docs/accuracy.md. */
const DOUBT_DEG = 20;
/** Pyramid levels of templates and pictures. */
export const LEVELS = 3;

/** Where a segment is: turned by `turnDeg` since the epoch's first anchor, grown by `scale`, that anchor's centroid now at (x, y). */
interface Place {
  readonly turnDeg: number;
  readonly scale: number;
  readonly x: number;
  readonly y: number;
}

interface Anchor {
  readonly template: PatchTemplate;
  readonly place: Place;
}

/** A segment's last move: from one place to the next. */
export interface Step {
  readonly from: Place;
  readonly to: Place;
}

/** What one picture says of a segment. */
export interface SegmentSighting {
  readonly turnDeg: Deg;
  readonly seDeg: Deg;
  readonly zncc: Ratio;
}

const wrapped = (degrees: number): number => ((((degrees + 180) % 360) + 360) % 360) - 180;
const middle = (shape: SegmentShape): Point => ({ x: (shape.from.x + shape.to.x) / 2, y: (shape.from.y + shape.to.y) / 2 });

/** Follows one segment from its rest picture on; made anew when the segment is lost for good. */
export class SegmentTracker {
  private readonly anchors: Anchor[];
  private readonly rest: SegmentShape;
  private current: Anchor;
  private last: Place;
  private before: { readonly place: Place; readonly stepMs: number } | null = null;
  private lastMs: number;

  private constructor(first: Anchor, rest: SegmentShape, tMs: number) {
    this.anchors = [first];
    this.current = first;
    this.rest = rest;
    this.last = first.place;
    this.lastMs = tMs;
  }

  /**
   * Takes the rest picture.
   * @param crop grey picture around the segment, frame px; @param rest where the landmarks see the segment in it
   * @returns null when the segment is too small or has no texture
   */
  static start(crop: Crop, rest: SegmentShape, tMs: number): SegmentTracker | null {
    const prepared = prepareTemplate(buildPyramid(crop, LEVELS), capsuleMask(rest.outline, crop));
    if (!prepared.ok) return null;
    const { centroidX, centroidY } = prepared.value;
    const place = { turnDeg: 0, scale: 1, x: centroidX, y: centroidY };
    return new SegmentTracker({ template: prepared.value, place }, rest, tMs);
  }

  /** Where the segment's outline is now, or will be if it goes on as it went: what a crop must contain. */
  outline(tMs: number, seen: SegmentShape | null): readonly Capsule[] {
    const guess = this.expected(tMs);
    const first = this.anchors[0] as Anchor;
    const moved = movedOutline(this.rest.outline, first.place, guess);
    return seen ? [...moved, ...seen.outline] : moved;
  }

  /**
   * Finds the segment in the next picture.
   * @param seen where the landmarks see it, or null when this frame has none
   * @param carrier the last step of the neighbour nearer the hip, which carries this segment along; null when unknown
   * @returns null when it is not found
   */
  find(picture: Pyramid, crop: Crop, tMs: number, seen: SegmentShape | null, carrier: Step | null): SegmentSighting | null {
    const carried = carrier && tMs > this.lastMs ? [afterStep(this.last, carrier)] : [];
    const guesses = [...carried, this.expected(tMs), this.last, ...(seen ? [this.asSeen(seen)] : [])];
    const best = this.bestGuess(guesses, picture);
    let found = this.align(best, picture);
    for (const guess of guesses) {
      if (found && found.alignment.keptZncc >= SURE_ZNCC) break;
      if (guess !== best) found = better(found, this.align(guess, picture));
    }
    found ??= this.search(seen ? this.asSeen(seen) : best, picture);
    if (!found) return null;
    const checked = seen ? this.checked(found, seen, picture) : found;
    this.moveTo(checked, crop, tMs);
    return { turnDeg: deg(checked.place.turnDeg), seDeg: checked.alignment.rotationSeDeg, zncc: checked.alignment.keptZncc };
  }

  /** The last move, for the segments further down the leg; null before there is one. */
  get step(): Step | null {
    return this.before && { from: this.before.place, to: this.last };
  }

  /** A good match far from where the landmarks see the segment must stand against a match found near them. */
  private checked(found: Found, seen: SegmentShape, picture: Pyramid): Found {
    const place = this.asSeen(seen);
    const away = Math.hypot(found.place.x - place.x, found.place.y - place.y);
    const apart = Math.abs(wrapped(found.place.turnDeg - place.turnDeg));
    if (apart < DOUBT_DEG && away < 0.5 * shapeLength(seen)) return found;
    return better(found, this.align(place, picture) ?? this.search(place, picture)) ?? found;
  }

  private moveTo({ place, anchor, alignment }: Found, crop: Crop, tMs: number): void {
    const stepMs = tMs - this.lastMs;
    this.before = stepMs > 0 ? { place: this.last, stepMs } : null;
    this.last = place;
    this.lastMs = tMs;
    this.current = anchor;
    const apart = Math.abs(place.turnDeg - anchor.place.turnDeg);
    if (apart < ANCHOR_SPACING_DEG || alignment.keptZncc < ANCHOR_ZNCC || !alignment.converged) return;
    const first = this.anchors[0] as Anchor;
    const mask = capsuleMask(movedOutline(this.rest.outline, first.place, place), crop);
    const prepared = prepareTemplate(buildPyramid(crop, LEVELS), mask);
    if (!prepared.ok) return;
    this.current = { template: prepared.value, place };
    this.anchors.push(this.current);
  }

  /** Constant velocity from the last two sightings, over at most twice the last step. */
  private expected(tMs: number): Place {
    const { last, before } = this;
    const stepMs = tMs - this.lastMs;
    if (!before || stepMs <= 0) return last;
    const share = Math.min(2, stepMs / before.stepMs);
    return {
      turnDeg: last.turnDeg + share * (last.turnDeg - before.place.turnDeg),
      scale: last.scale,
      x: last.x + share * (last.x - before.place.x),
      y: last.y + share * (last.y - before.place.y),
    };
  }

  /** The place that follows from where the landmarks see the segment. */
  private asSeen(seen: SegmentShape): Place {
    const first = (this.anchors[0] as Anchor).place;
    const raw = ((shapeDirection(seen) - shapeDirection(this.rest)) * 180) / Math.PI;
    const turnDeg = this.last.turnDeg + wrapped(raw - this.last.turnDeg);
    const scale = Math.max(0.7, Math.min(1.4, shapeLength(seen) / shapeLength(this.rest)));
    const angle = radOfDeg(deg(turnDeg));
    const from = middle(this.rest);
    const to = middle(seen);
    const dx = first.x - from.x;
    const dy = first.y - from.y;
    return {
      turnDeg,
      scale: this.last.scale,
      x: to.x + scale * (Math.cos(angle) * dx - Math.sin(angle) * dy),
      y: to.y + scale * (Math.sin(angle) * dx + Math.cos(angle) * dy),
    };
  }

  /** The anchor whose turn is nearest, the present one unless another is clearly nearer. */
  private anchorFor(turnDeg: number): Anchor {
    const apart = (a: Anchor) => Math.abs(a.place.turnDeg - turnDeg);
    const nearest = this.anchors.reduce((best, a) => (apart(a) < apart(best) ? a : best));
    return apart(nearest) + ANCHOR_HYSTERESIS_DEG < apart(this.current) ? nearest : this.current;
  }

  private bestGuess(guesses: readonly Place[], picture: Pyramid): Place {
    let best = guesses[0] as Place;
    let bestScore = Number.NEGATIVE_INFINITY;
    for (const guess of guesses) {
      const anchor = this.anchorFor(guess.turnDeg);
      const score = coarseScore(anchor.template, startAt(anchor, guess), picture);
      if (score > bestScore) {
        best = guess;
        bestScore = score;
      }
    }
    return best;
  }

  private align(guess: Place, picture: Pyramid): Found | null {
    return this.alignFrom(this.anchorFor(guess.turnDeg), startAt(this.anchorFor(guess.turnDeg), guess), picture);
  }

  private alignFrom(anchor: Anchor, start: PlaneMotion, picture: Pyramid): Found | null {
    const aligned = alignPatch(anchor.template, picture, start, { allowScale: true });
    if (!aligned.ok || aligned.value.keptZncc < FOUND_ZNCC) return null;
    return { anchor, alignment: aligned.value, place: placeAfter(anchor, aligned.value.motion) };
  }

  private search(guess: Place, picture: Pyramid): Found | null {
    const anchor = this.anchorFor(guess.turnDeg);
    const searched = searchRotation(anchor.template, picture, startAt(anchor, guess), {
      rotationRangeDeg: deg(24),
      shiftRangePx: px(16),
    });
    return searched.ok ? this.alignFrom(anchor, searched.value.best.motion, picture) : null;
  }
}

interface Found {
  readonly anchor: Anchor;
  readonly alignment: PatchAlignment;
  readonly place: Place;
}

const better = (a: Found | null, b: Found | null): Found | null =>
  !a || (b && b.alignment.keptZncc > a.alignment.keptZncc) ? b : a;

/** Where a segment at `place` comes to be when it goes along with its neighbour's step. */
function afterStep(place: Place, { from, to }: Step): Place {
  const angle = radOfDeg(deg(to.turnDeg - from.turnDeg));
  const scale = to.scale / from.scale;
  const dx = place.x - from.x;
  const dy = place.y - from.y;
  return {
    turnDeg: place.turnDeg + to.turnDeg - from.turnDeg,
    scale: place.scale * scale,
    x: to.x + scale * (Math.cos(angle) * dx - Math.sin(angle) * dy),
    y: to.y + scale * (Math.sin(angle) * dx + Math.cos(angle) * dy),
  };
}

/** The motion from an anchor's picture to a place. */
const startAt = (anchor: Anchor, place: Place): PlaneMotion => ({
  rotationDeg: deg(place.turnDeg - anchor.place.turnDeg),
  scale: ratio(place.scale / anchor.place.scale),
  pivotX: px(anchor.place.x),
  pivotY: px(anchor.place.y),
  shiftX: px(place.x - anchor.place.x),
  shiftY: px(place.y - anchor.place.y),
});

/** The place at which a motion from an anchor's picture ends. */
function placeAfter(anchor: Anchor, motion: PlaneMotion): Place {
  const [x, y] = movedPoint(motion, anchor.place.x, anchor.place.y);
  return { turnDeg: anchor.place.turnDeg + motion.rotationDeg, scale: anchor.place.scale * motion.scale, x, y };
}

/** How alike a template and the picture are at a motion, on the coarsest level both have. */
function coarseScore(template: PatchTemplate, motion: PlaneMotion, picture: Pyramid): number {
  const level = template.levels[Math.min(template.levels.length, picture.levels.length) - 1] as TemplateLevel;
  const image = (picture.levels[level.level] as PyramidLevel).image;
  const shrink = 1 / 2 ** level.level;
  const [x, y] = movedPoint(motion, template.centroidX, template.centroidY);
  const angle = radOfDeg(motion.rotationDeg);
  const seen = new Float32Array(level.count);
  const pose = {
    centreX: (x - picture.originX) * shrink,
    centreY: (y - picture.originY) * shrink,
    cos: motion.scale * Math.cos(angle),
    sin: motion.scale * Math.sin(angle),
  };
  const inside = sampleTemplate(level, image, pose, seen);
  return inside < 0.5 * level.totalWeight ? -1 : fitLight(level, seen, level.weight).zncc;
}

function movedOutline(outline: readonly Capsule[], from: Place, to: Place): readonly Capsule[] {
  const angle = radOfDeg(deg(to.turnDeg - from.turnDeg));
  const scale = to.scale / from.scale;
  const moved = (p: Point): Point => {
    const dx = p.x - from.x;
    const dy = p.y - from.y;
    return {
      x: to.x + scale * (Math.cos(angle) * dx - Math.sin(angle) * dy),
      y: to.y + scale * (Math.sin(angle) * dx + Math.cos(angle) * dy),
    };
  };
  return outline.map(({ a, b, radius }) => ({ a: moved(a), b: moved(b), radius: radius * scale }));
}
