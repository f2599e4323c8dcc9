import { deg, radOfDeg } from '../units.ts';
import { capsuleMask } from './capsule-mask.ts';
import { changedTemplate } from './changed-template.ts';
import type { Grey } from './grey.ts';
import { alignPatch, type PatchAlignment } from './patch-alignment.ts';
import type { PosePrior } from './patch-prior.ts';
import { fitLight, sampleTemplate } from './patch-sampling.ts';
import { type PatchTemplate, prepareTemplate } from './patch-template.ts';
import { motionBetween, outlineAfter, type Place, placeAfter, pointAfter } from './place.ts';
import type { PyramidLevel } from './pyramid.ts';
import { type Capsule, type Point, type SegmentShape, shapeLength } from './segment-shape.ts';
import { type Sight, sightOf } from './sight.ts';
import type { TemplateLevel } from './template-level.ts';
import { trustOnly } from './trusted-mask.ts';

/** Pyramid levels of pictures that segments are looked for in. */
export const LEVELS = 3;
/**
 * The finest level looked at is the first on which a segment is at most this long, px. Measured: shanks of 80 to 130 px are turned 0.6 degrees nearer
 * the truth on the half-size picture than on the full one, at a quarter of the time; feet of 40 to 65 px 0.1 degrees further from it.
 */
const LONGEST_PX = 75;
/** The coarsest level looked at is the last on which an outline still reaches this far to either side, px: beyond, mostly neighbours are seen. Chosen. */
const NARROWEST_PX = 4;
/** Least share of an outline inside the picture for a place to be scored. Chosen. */
const MIN_INSIDE_SHARE = 0.5;

/** A picture of a segment that later ones are compared with, and where the segment was in it. */
export interface Anchor {
  readonly place: Place;
  /** The picture itself, when its unchanged parts must be told from the segment. */
  readonly taken: Omit<Sight, 'frame'> | null;
  /** One for each of the shape's outlines; null where that outline shows no texture. */
  readonly patches: readonly (Patch | null)[];
}

interface Patch {
  readonly template: PatchTemplate;
  readonly finest: TemplateLevel;
  readonly coarsest: TemplateLevel;
}

/** What was made of patches for one frame, so that it is made once. */
const madeFor = new WeakMap<Grey, Map<Patch, Patch>>();

/** What is expected of a segment in a picture, beside its turn: where its joint lies, and how sure joint, turn and size are. */
export interface Expectation {
  readonly joint: Point;
  readonly jointSdPx: number;
  readonly turnSdDeg: number;
  readonly logScaleSd: number;
}

/** A segment found in a picture, by an anchor and one of the shape's outlines. */
export interface Match {
  readonly anchor: Anchor;
  readonly outline: number;
  readonly place: Place;
  readonly alignment: PatchAlignment;
}

/** The rest picture as an anchor; null when the segment is too small or too plain in it. */
export function restAnchor(sight: Sight, rest: SegmentShape): Anchor | null {
  const patches = rest.outlines.map((outline) => patchOf(sight, capsuleMask(outline, sight.crop), outline, rest));
  const first = patches.find((p) => p !== null);
  if (!first) return null;
  const { centroidX, centroidY } = first.template;
  return { patches, taken: takenOf(sight, rest), place: { turnDeg: 0, scale: 1, x: centroidX, y: centroidY } };
}

const takenOf = ({ crop, pyramid }: Sight, rest: SegmentShape): Anchor['taken'] => (rest.groundBeside ? { crop, pyramid } : null);

/**
 * A later picture, in which the segment was found, as an anchor; pixels that did not fit are left out of it.
 * @param first the place in the rest picture
 */
export function laterAnchor(sight: Sight, rest: SegmentShape, first: Place, found: Match): Anchor | null {
  const by = found.anchor.patches[found.outline] as Patch;
  const patches = rest.outlines.map((outline) => {
    const mask = capsuleMask(outlineAfter(outline, { from: first, to: found.place }), sight.crop);
    trustOnly(mask, sight.crop, by.template, by.finest, found.alignment);
    return patchOf(sight, mask, outline, rest);
  });
  return patches.some((p) => p !== null) ? { patches, taken: takenOf(sight, rest), place: found.place } : null;
}

function patchOf({ pyramid }: Sight, mask: Float32Array, outline: readonly Capsule[], rest: SegmentShape): Patch | null {
  const prepared = prepareTemplate(pyramid, mask);
  if (!prepared.ok) return null;
  const { levels } = prepared.value;
  const radius = Math.min(...outline.map((c) => c.radius));
  const deepest = levels.length - 1;
  const finest = Math.min(deepest, Math.max(0, Math.ceil(Math.log2(shapeLength(rest) / LONGEST_PX))));
  const coarsest = Math.min(deepest, Math.max(finest, Math.floor(Math.log2(radius / NARROWEST_PX))));
  return { template: prepared.value, finest: levels[finest] as TemplateLevel, coarsest: levels[coarsest] as TemplateLevel };
}

/** An anchor's patch as it must be matched with a frame: what has not changed at its old place weighs little. */
function patchNow({ patches, taken }: Anchor, outline: number, frame: Grey): Patch | null {
  const patch = patches[outline];
  if (!patch || !taken) return patch ?? null;
  const made = madeFor.get(frame) ?? new Map<Patch, Patch>();
  madeFor.set(frame, made);
  const before = made.get(patch);
  if (before) return before;
  const { originX: x, originY: y, width, height } = taken.crop;
  const there = sightOf(frame, { x, y, width, height }, LEVELS);
  if (!there) return patch;
  const template = changedTemplate(patch.template, taken.pyramid, there.pyramid);
  const sameLevel = ({ level }: TemplateLevel) => template.levels.find((l) => l.level === level) as TemplateLevel;
  const now: Patch = { template, finest: sameLevel(patch.finest), coarsest: sameLevel(patch.coarsest) };
  made.set(patch, now);
  return now;
}

/** How alike an anchor and the picture are with the segment at a place, on the coarsest level, -1 to 1; -1 when most of it lies outside. */
export function likeness(anchor: Anchor, outline: number, place: Place, { frame, pyramid }: Sight): number {
  const patch = patchNow(anchor, outline, frame);
  const image = patch && (pyramid.levels[patch.coarsest.level] as PyramidLevel | undefined)?.image;
  if (!patch || !image) return -1;
  const { template, coarsest } = patch;
  const shrink = 1 / 2 ** coarsest.level;
  const centroid = pointAfter({ x: template.centroidX, y: template.centroidY }, { from: anchor.place, to: place });
  const angle = radOfDeg(deg(place.turnDeg - anchor.place.turnDeg));
  const scale = place.scale / anchor.place.scale;
  const seen = new Float32Array(coarsest.count);
  const pose = {
    centreX: (centroid.x - pyramid.originX) * shrink,
    centreY: (centroid.y - pyramid.originY) * shrink,
    cos: scale * Math.cos(angle),
    sin: scale * Math.sin(angle),
  };
  const inside = sampleTemplate(coarsest, image, pose, seen);
  return inside < MIN_INSIDE_SHARE * coarsest.totalWeight ? -1 : fitLight(coarsest, seen, coarsest.weight).zncc;
}

/**
 * Matches an anchor with a picture from a guessed place on.
 * @param joint where the joint nearer the hip was in the anchor's picture
 * @returns null when they do not resemble each other where the search went
 */
export function match(
  anchor: Anchor,
  outline: number,
  guess: Place,
  joint: Point,
  expected: Expectation,
  { frame, pyramid }: Sight,
): Match | null {
  const patch = patchNow(anchor, outline, frame);
  if (!patch) return null;
  const { template, finest, coarsest } = patch;
  const prior: PosePrior = {
    jointX: joint.x - template.centroidX,
    jointY: joint.y - template.centroidY,
    atX: expected.joint.x,
    atY: expected.joint.y,
    jointSdPx: expected.jointSdPx,
    turnRad: radOfDeg(deg(guess.turnDeg - anchor.place.turnDeg)),
    turnSdRad: radOfDeg(deg(expected.turnSdDeg)),
    // A segment is as large as it was at rest, give or take.
    logScale: -Math.log(anchor.place.scale),
    logScaleSd: expected.logScaleSd,
  };
  const aligned = alignPatch(template, pyramid, motionBetween(anchor.place, guess), {
    allowScale: true,
    finestLevel: finest.level,
    coarsestLevel: coarsest.level,
    prior,
  });
  if (!aligned.ok) return null;
  return { anchor, outline, alignment: aligned.value, place: placeAfter(anchor.place, aligned.value.motion) };
}
