import { cropOf, type Grey, type Rect } from '../flow/grey.ts';
import { FLAT, TRACKED, trackBothWays } from '../flow/lucas-kanade.ts';
import { buildPyramid, type Pyramid } from '../flow/pyramid.ts';
import { fail, ok, type Result } from '../result.ts';
import { type Ms, wrapped } from '../units.ts';
import type { ToeOrder } from './arrange.ts';
import { bendAt, type MeasuredSpot } from './line-angle.ts';
import { distance, type Spot } from './rgba-picture.ts';
import { TOE_STICKERS, type ToeSticker } from './sticker-name.ts';

/** A picture to which points are tied: what the skin looked like when the toe stood about so. */
interface Anchor {
  readonly pyramid: Pyramid;
  readonly spots: ToeOrder<Spot>;
  readonly bendDeg: number;
}

/** Three points on bare skin that are being followed; a value, never changed once made. */
export interface SkinState {
  readonly tMs: Ms;
  readonly pyramid: Pyramid;
  /** Where each point was last seen. */
  readonly spots: ToeOrder<Spot>;
  readonly velocity: ToeOrder<Spot>;
  readonly seenMs: ToeOrder<Ms>;
  /** The resting picture first. */
  readonly anchors: readonly Anchor[];
}

/** Skin without a mark, a crease or a shadow's edge there: nothing to follow; or beside the picture. */
export type SkinRefusal = { readonly kind: 'flat-skin' | 'outside'; readonly name: ToeSticker };

export interface SkinStep {
  readonly state: SkinState;
  /** Null: not found in this picture. */
  readonly spots: ToeOrder<MeasuredSpot | null>;
}

/** Window that is compared, px. Chosen: skin has little texture, hence larger than flow's. */
const WINDOW_PX = 21;
const LEVELS = 3;
/** Picture kept around the points, px. Chosen: the window on the coarsest level. */
const MARGIN_PX = 56;
/** Followed forward and back, a point must come home within this, px. Kalal et al. 2010; chosen. */
const MAX_CLOSURE_PX = 0.7;
/** A new anchor is made when the toe stands this far from all others, deg. Windows do not turn with the picture; within 4 degrees they need not. */
const ANCHOR_STEP_DEG = 5;
const MOST_ANCHORS = 16;
/** An anchor may move a point by so much from where the last picture has it, px: more is another place that looks alike. Chosen. */
const MAX_CORRECTION_PX = 4;
/** Standard error of a point, each way, px: tied to an anchor, and not. Chosen; see docs/angles.md for what angles come to. */
const ANCHORED_ERROR_PX = 0.3;
const DRIFTING_ERROR_PX = 0.6;
const OPTIONS = { windowPx: WINDOW_PX, levels: LEVELS } as const;
/**
 * The large window finds a point again, and holds more than the skin at it: the floor behind a toe, the foot beside a joint. They go other ways and drag it along, so a small one has the
 * last word, no farther from the large one's answer than MAX_FINE_PX. It is as wide as this share of the way between tip and knuckle, px at the least and at the most. Chosen.
 */
const FINE_SHARE = 0.4;
const LEAST_FINE_PX = 11;
const MOST_FINE_PX = 13;
const MAX_FINE_PX = 1.5;

const NAMES = TOE_STICKERS;
const each = <T>(make: (name: ToeSticker) => T): ToeOrder<T> => ({
  tip: make('tip'),
  knuckle: make('knuckle'),
  arch: make('arch'),
});
const flat = (spots: ToeOrder<Spot>): Float32Array => Float32Array.from(NAMES.flatMap((n) => [spots[n].x, spots[n].y]));

/** Begins to follow three points that were tapped while the toe rests. */
export function startSkinPoints(grey: Grey, spots: ToeOrder<Spot>, tMs: Ms): Result<SkinState, SkinRefusal> {
  for (const name of NAMES) {
    const { x, y } = spots[name];
    if (!(x >= 0 && y >= 0 && x <= grey.width - 1 && y <= grey.height - 1)) return fail({ kind: 'outside', name });
  }
  const pyramid = pyramidAround(grey, spots);
  if (!pyramid) return fail({ kind: 'outside', name: 'tip' });
  const { status } = trackBothWays(pyramid, pyramid, flat(spots), OPTIONS);
  for (const [i, name] of NAMES.entries()) if (status[i] === FLAT) return fail({ kind: 'flat-skin', name });
  return ok({
    tMs,
    pyramid,
    spots,
    velocity: each(() => ({ x: 0, y: 0 })),
    seenMs: each(() => tMs),
    anchors: [{ pyramid, spots, bendDeg: bendOf(spots) }],
  });
}

/**
 * Follows three points on skin into the next picture: from the last picture, then tied to the anchor in which the toe stood nearest, so that what each
 * step is out by does not add up. At rest that anchor is the first picture.
 */
export function stepSkinPoints(state: SkinState, grey: Grey, tMs: Ms): SkinStep {
  const dtMs = tMs - state.tMs;
  if (!(dtMs > 0)) throw new Error(`stepSkinPoints requires a later time than ${state.tMs}, got ${tMs}`);
  const guess = each((n) => ({
    x: state.spots[n].x + state.velocity[n].x * dtMs,
    y: state.spots[n].y + state.velocity[n].y * dtMs,
  }));
  const pyramid = pyramidAround(grey, guess);
  if (!pyramid) return { state: { ...state, tMs }, spots: each(() => null) };
  const chained = follow(state.pyramid, pyramid, state.spots, guess);
  const rough = each((n) => chained[n] ?? guess[n]);
  const anchor = nearestAnchor(state.anchors, bendOf(rough));
  const tied = follow(anchor.pyramid, pyramid, anchor.spots, rough);
  const fine = follow(
    anchor.pyramid,
    pyramid,
    anchor.spots,
    each((n) => tied[n] ?? rough[n]),
    { windowPx: fineWindow(state.anchors[0]?.spots ?? state.spots), levels: 1 },
  );
  const seen = each((n): MeasuredSpot | null => {
    const there = tied[n] && closest(fine[n], tied[n]);
    const near = chained[n];
    const gap = tMs - dtMs - state.seenMs[n];
    if (there && distance(there, rough[n]) <= MAX_CORRECTION_PX) return { at: there, errorPx: ANCHORED_ERROR_PX };
    // After a hole only an anchor says that it is the same point.
    return near && gap === 0 ? { at: near, errorPx: DRIFTING_ERROR_PX } : null;
  });
  return { state: after(state, pyramid, seen, tMs, dtMs), spots: seen };
}

function after(state: SkinState, pyramid: Pyramid, seen: ToeOrder<MeasuredSpot | null>, tMs: Ms, dtMs: number): SkinState {
  const spots = each((n) => seen[n]?.at ?? state.spots[n]);
  const complete = NAMES.every((n) => seen[n] !== null);
  const bendDeg = bendOf(spots);
  const isNew =
    complete && state.anchors.length < MOST_ANCHORS && away(nearestAnchor(state.anchors, bendDeg), bendDeg) > ANCHOR_STEP_DEG;
  return {
    tMs,
    pyramid,
    spots,
    velocity: each((n) => {
      const at = seen[n]?.at;
      return at && state.seenMs[n] === tMs - dtMs
        ? { x: (at.x - state.spots[n].x) / dtMs, y: (at.y - state.spots[n].y) / dtMs }
        : { x: 0, y: 0 };
    }),
    seenMs: each((n) => (seen[n] ? tMs : state.seenMs[n])),
    anchors: isNew ? [...state.anchors, { pyramid, spots, bendDeg }] : state.anchors,
  };
}

/** Where points of one picture are in another; null where following them back does not end where they were. */
function follow(
  from: Pyramid,
  to: Pyramid,
  spots: ToeOrder<Spot>,
  guesses: ToeOrder<Spot>,
  options: { readonly windowPx: number; readonly levels: number } = OPTIONS,
): ToeOrder<Spot | null> {
  const { positions, status, closurePx } = trackBothWays(from, to, flat(spots), options, flat(guesses));
  const at = (i: number): Spot | null =>
    status[i] === TRACKED && (closurePx[i] as number) <= MAX_CLOSURE_PX
      ? { x: positions[2 * i] as number, y: positions[2 * i + 1] as number }
      : null;
  return { tip: at(0), knuckle: at(1), arch: at(2) };
}

/** An odd number of px. */
const fineWindow = ({ tip, knuckle }: ToeOrder<Spot>): number =>
  2 * Math.floor(Math.min(MOST_FINE_PX, Math.max(LEAST_FINE_PX, FINE_SHARE * distance(tip, knuckle))) / 2 - 0.5) + 1;

/** What the small window says where it agrees with the large one. */
const closest = (fine: Spot | null, large: Spot): Spot => (fine && distance(fine, large) <= MAX_FINE_PX ? fine : large);

const bendOf = ({ tip, knuckle, arch }: ToeOrder<Spot>): number => {
  const exact = (at: Spot): MeasuredSpot => ({ at, errorPx: 0 });
  return bendAt(exact(arch), exact(knuckle), exact(tip)).bendDeg;
};

const away = (anchor: Anchor, bendDeg: number): number => Math.abs(wrapped(anchor.bendDeg - bendDeg));

const nearestAnchor = (anchors: readonly Anchor[], bendDeg: number): Anchor =>
  anchors.reduce((best, a) => (away(a, bendDeg) < away(best, bendDeg) ? a : best));

/** The picture around all three points. */
function pyramidAround(grey: Grey, spots: ToeOrder<Spot>): Pyramid | null {
  const xs = NAMES.map((n) => spots[n].x);
  const ys = NAMES.map((n) => spots[n].y);
  const x = Math.min(...xs) - MARGIN_PX;
  const y = Math.min(...ys) - MARGIN_PX;
  const rect: Rect = { x, y, width: Math.max(...xs) + MARGIN_PX - x, height: Math.max(...ys) + MARGIN_PX - y };
  const crop = cropOf(grey, rect);
  return crop ? buildPyramid(crop, LEVELS) : null;
}
