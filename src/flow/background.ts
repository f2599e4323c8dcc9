import { px } from '../units.ts';
import { findCorners } from './corners.ts';
import { TRACKED, trackBothWays, trackPoints } from './lucas-kanade.ts';
import { mayShow, type PersonHull } from './person-hull.ts';
import { movedPoint, type PlaneMotion } from './plane-motion.ts';
import type { Pyramid, PyramidLevel } from './pyramid.ts';
import { fitRobustSimilarity } from './robust-similarity.ts';
import { fitSimilarity, type SimilarityFit } from './similarity.ts';

/** What the background tells of one picture; px of the pictures given. */
export interface BackgroundSighting {
  /** From the reference picture to this one. */
  readonly motion: PlaneMotion;
  readonly rotationSeDeg: number;
  /** Share of the points asked that agree. */
  readonly agreement: number;
  readonly points: number;
}

/** Corners of the reference picture: few, apart from each other, well above the noise. Chosen. */
const CORNERS = { maxCount: 40, quality: 0.02, minDistancePx: 7, blockPx: 5 };
/**
 * Least strength of a corner, (grey levels per px)^2: video coding lets a noisy wall creep, and its specks reach 3. Chosen; with 0.5 still cameras of dim
 * clips seemed to turn by half a degree.
 */
const LEAST_STRENGTH = 8;
const WINDOW = { windowPx: 11 };
/** A point that was where it was expected comes out on the finest level in this many steps. Chosen. */
const QUICK = { ...WINDOW, levels: 1, iterations: 4 };
/** Fewest points that may tell of the camera, and how far they must spread, root mean square, as a share of the picture's diagonal. Chosen. */
const LEAST_POINTS = 6;
const LEAST_SPREAD = 0.1;
/** A point within this of its expected place has stayed with the room, px. Chosen. */
const EXPECTED_PX = 0.35;
/** So many points where they were expected speak for a camera that goes on as it did, though others move: people and shadows move, rooms don't. Chosen. */
const STAYED_SHARE = 0.4;
/** A motion of the camera takes the bulk of the room along. Chosen: stricter than for staying. */
const MOVED_SHARE = 0.6;
/**
 * Distance within which points agree about a motion, px: so much, and this share of the shift, since a camera that turns aside bends the picture towards
 * its edges. Chosen: at 50 degrees of view the edge goes a third further than the middle.
 */
const AGREE_PX = 0.3;
const AGREE_SHARE = 0.2;
/** A point followed there and back must return within this, px. Chosen. */
const CLOSURE_PX = 0.3;
/** A point that has gone its own way in this many frames more than it agreed is no part of the room. Chosen: a third of a second. */
const STRANGER = 10;
/** A reference picture with fewer points left than this share serves no more. Chosen. */
const THIN_SHARE = 0.5;

/** The room behind the person in a reference picture: corners that are found again in later pictures. */
export class Background {
  private readonly reference: Pyramid;
  private readonly points: Float32Array;
  private readonly strange: Uint8Array;
  private readonly leastSpreadPx: number;
  /** Where each was last found, or is where the others say. */
  private places: Float32Array;

  /** @param hull where the person is, in px of `reference`; null: nobody known */
  constructor(reference: Pyramid, hull: PersonHull | null) {
    const { width, height } = (reference.levels[0] as PyramidLevel).image;
    const mask = new Uint8Array(width * height).fill(1);
    if (hull) {
      for (let i = 0; i < mask.length; i++) if (mayShow(hull, i % width, Math.floor(i / width))) mask[i] = 0;
    }
    this.reference = reference;
    const { points, strength } = findCorners(reference, { ...CORNERS, mask });
    const weak = strength.findIndex((s) => s < LEAST_STRENGTH);
    this.points = weak < 0 ? points : points.slice(0, 2 * weak);
    this.places = this.points.slice();
    this.strange = new Uint8Array(this.count);
    this.leastSpreadPx = LEAST_SPREAD * Math.hypot(width, height);
  }

  get count(): number {
    return this.points.length >> 1;
  }

  /** Whether there are points enough to tell anything. */
  get tells(): boolean {
    return this.count >= LEAST_POINTS;
  }

  /** Whether too few of the points are left to go on with. */
  thin(hull: PersonHull | null): boolean {
    return this.asked(this.places, hull).left < Math.max(LEAST_POINTS, THIN_SHARE * this.count);
  }

  /**
   * Finds the background in a later picture.
   * @param hull where the person is now; their points are not asked
   * @returns null when it does not tell: too few points, too close together, or no agreement among them
   */
  find(picture: Pyramid, hull: PersonHull | null): BackgroundSighting | null {
    const expected = this.places;
    const { weights, left } = this.asked(expected, hull);
    if (left < LEAST_POINTS) return null;
    return this.findStaying(picture, expected, weights, left) ?? this.findMoved(picture, expected, weights, left);
  }

  /** The points in the picture that are neither strangers nor behind the person. */
  private asked(places: Float32Array, hull: PersonHull | null): { readonly weights: Uint8Array; readonly left: number } {
    const { width, height } = (this.reference.levels[0] as PyramidLevel).image;
    const weights = new Uint8Array(this.count);
    let left = 0;
    for (let i = 0; i < this.count; i++) {
      const x = places[2 * i] as number;
      const y = places[2 * i + 1] as number;
      const shown = x >= 0 && y >= 0 && x <= width - 1 && y <= height - 1;
      if (!shown || (this.strange[i] as number) >= STRANGER || (hull && mayShow(hull, x, y))) continue;
      weights[i] = 1;
      left++;
    }
    return { weights, left };
  }

  /** The camera goes on as it stood: most cheaply asked, and believed even when much moves in the picture. */
  private findStaying(picture: Pyramid, expected: Float32Array, weights: Uint8Array, left: number): BackgroundSighting | null {
    const { positions, status } = trackPoints(this.reference, picture, this.points, QUICK, expected);
    const agree = weights.map((w, i) => {
      const dx = (positions[2 * i] as number) - (expected[2 * i] as number);
      const dy = (positions[2 * i + 1] as number) - (expected[2 * i + 1] as number);
      return w === 1 && status[i] === TRACKED && Math.hypot(dx, dy) <= EXPECTED_PX ? 1 : 0;
    });
    return this.sighting(positions, weights, agree, left, STAYED_SHARE);
  }

  /** The camera has jumped: followed there and back over all levels, and believed when the bulk of the points agree. */
  private findMoved(picture: Pyramid, expected: Float32Array, weights: Uint8Array, left: number): BackgroundSighting | null {
    const { positions, closurePx } = trackBothWays(this.reference, picture, this.points, WINDOW, expected);
    const followed = weights.map((w, i) => (w === 1 && (closurePx[i] as number) <= CLOSURE_PX ? 1 : 0));
    const shifts = [...followed].flatMap((w, i) => (w === 1 ? [this.distance(positions, i)] : [])).sort((a, b) => a - b);
    const shift = shifts[shifts.length >> 1] ?? 0;
    const options = { allowScale: true, inlierPx: px(AGREE_PX + AGREE_SHARE * shift), minInliers: LEAST_POINTS };
    const fit = fitRobustSimilarity(this.points, positions, options, followed);
    return fit.ok ? this.sighting(positions, weights, fit.value.inliers, left, MOVED_SHARE) : null;
  }

  private sighting(
    positions: Float32Array,
    asked: Uint8Array,
    agree: Uint8Array,
    left: number,
    leastShare: number,
  ): BackgroundSighting | null {
    const count = agree.reduce((sum, v) => sum + v, 0);
    if (count < Math.max(LEAST_POINTS, leastShare * left) || this.spread(agree, count) < this.leastSpreadPx) return null;
    const fit = fitSimilarity(this.points, positions, { allowScale: true, weights: agree });
    if (!fit.ok) return null;
    this.remember(fit.value, positions, asked, agree);
    return { motion: fit.value.motion, rotationSeDeg: fit.value.rotationSeDeg, agreement: count / left, points: left };
  }

  private distance(positions: Float32Array, i: number): number {
    const dx = (positions[2 * i] as number) - (this.points[2 * i] as number);
    return Math.hypot(dx, (positions[2 * i + 1] as number) - (this.points[2 * i + 1] as number));
  }

  private remember({ motion }: SimilarityFit, positions: Float32Array, asked: Uint8Array, agree: Uint8Array): void {
    this.places = this.points.slice();
    for (let i = 0; i < this.count; i++) {
      const found = agree[i] === 1 ? positions : this.points;
      const [x, y] = [found[2 * i] as number, found[2 * i + 1] as number];
      this.places.set(agree[i] === 1 ? [x, y] : movedPoint(motion, x, y), 2 * i);
      const s = this.strange[i] as number;
      if (asked[i] === 1) this.strange[i] = agree[i] === 1 ? Math.max(0, s - 1) : s + 1;
    }
  }

  /** Root mean square distance of the marked points from their centroid. */
  private spread(marked: Uint8Array, count: number): number {
    let x = 0;
    let y = 0;
    let squares = 0;
    for (let i = 0; i < marked.length; i++) {
      if (marked[i] !== 1) continue;
      const px = this.points[2 * i] as number;
      const py = this.points[2 * i + 1] as number;
      x += px;
      y += py;
      squares += px * px + py * py;
    }
    return Math.sqrt(Math.max(0, squares / count - (x / count) ** 2 - (y / count) ** 2));
  }
}
