import { type Crop, cropOf } from '../flow/grey.ts';
import { TRACKED, trackBothWays } from '../flow/lucas-kanade.ts';
import { movedPoint } from '../flow/plane-motion.ts';
import { buildPyramid, type Pyramid } from '../flow/pyramid.ts';
import { fitRobustSimilarity } from '../flow/robust-similarity.ts';
import { type Ms, px } from '../units.ts';
import { distance, type RgbaPicture, type Spot } from './rgba-picture.ts';
import type { StickerName } from './sticker-name.ts';

/** The luma around the stickers of one frame, and where those were that were measured in it. */
export interface SkinPicture {
  readonly tMs: Ms;
  readonly crop: Crop;
  readonly at: Readonly<Partial<Record<StickerName, Spot>>>;
}

/** The skin around a hidden sticker: the places of its points in the newest picture, x, y pairs. */
export interface SkinAround {
  readonly tMs: Ms;
  readonly points: readonly number[];
}

/** Pictures kept: what covers a sticker lay beside it for a moment before. Chosen: a finger takes a tenth of a second. */
export const KEPT_PICTURES = 4;
/** Points lie on rings of these radii, in diameters of the sticker, this many on each. Chosen: beyond its own edge, near enough to move as it does. */
const RINGS = [1.1, 1.7] as const;
const POINTS_A_RING = 10;
/** The picture around a sticker that is compared, in diameters, and px more. */
const CROP_DIAMETERS = 2.4;
const CROP_MORE_PX = 16;
/** Followed forward and back a point must come home within this, px, and its window differ by no more, grey levels. Chosen. */
const MAX_CLOSURE_PX = 0.5;
const MAX_RESIDUAL = 14;
/** Windows with less to hold on to, (grey levels a px)^2, are left out: noise of 4 grey levels makes a tenth of this. Chosen. */
const OPTIONS = { windowPx: 13, levels: 2, minEigenvalue: 4 } as const;
/** Points move as one to within this, px; fewer than that many, or a smaller share of those that were followed, do not tell. Chosen. */
const INLIER_PX = 0.7;
const LEAST_POINTS = 5;
const LEAST_SHARE = 0.5;
/** While the sticker was still seen, what moved otherwise than it by more than this was not its skin, px a frame. Chosen. */
const OTHERWISE_PX = 1.5;

/** Integer weights of ITU-R BT.601. */
export function skinPicture({ width, height, data }: RgbaPicture, spots: readonly Spot[], marginPx: number): Crop | null {
  if (spots.length === 0) return null;
  const x0 = Math.max(0, Math.floor(Math.min(...spots.map((s) => s.x)) - marginPx));
  const y0 = Math.max(0, Math.floor(Math.min(...spots.map((s) => s.y)) - marginPx));
  const x1 = Math.min(width, Math.ceil(Math.max(...spots.map((s) => s.x)) + marginPx));
  const y1 = Math.min(height, Math.ceil(Math.max(...spots.map((s) => s.y)) + marginPx));
  if (!(x1 > x0 && y1 > y0)) return null;
  const across = x1 - x0;
  const grey = new Uint8Array(across * (y1 - y0));
  for (let y = y0; y < y1; y++) {
    let p = 4 * (y * width + x0);
    for (let i = (y - y0) * across; i < (y - y0 + 1) * across; i++, p += 4) {
      grey[i] = (77 * (data[p] as number) + 150 * (data[p + 1] as number) + 29 * (data[p + 2] as number)) >> 8;
    }
  }
  return { width: across, height: y1 - y0, data: grey, originX: x0, originY: y0 };
}

/** The margin around stickers that `skinFlow` needs, px. */
export const skinMargin = (diameterPx: number): number => CROP_DIAMETERS * diameterPx + CROP_MORE_PX;

/** Where a hidden sticker is, and the skin around it that told so. */
export interface SkinFlow {
  readonly at: Spot;
  readonly skin: SkinAround;
}

interface Hidden {
  readonly name: StickerName;
  readonly at: Spot;
  readonly diameterPx: number;
  readonly skin: SkinAround | null;
}

/**
 * Where the skin around a hidden sticker has carried it: points around it are followed from picture to picture, and must move as one piece. When it has just been hidden they
 * are taken from before, so that none lies on what covers it, and its place from before it was half covered.
 * @param pictures those before, newest last, `now` is the next
 * @returns null when too little of the skin around it is seen, or has no marks to follow
 */
export function skinFlow(hidden: Hidden, pictures: readonly SkinPicture[], now: SkinPicture): SkinFlow | null {
  const last = pictures.at(-1);
  if (!last) return null;
  if (hidden.skin && hidden.skin.tMs === last.tMs) {
    const step = oneStep(hidden, last, now, hidden.at, hidden.skin.points, null);
    return step && { at: step.at, skin: { tMs: now.tMs, points: step.points } };
  }
  const from = pictures.findIndex((p) => p.at[hidden.name]);
  const first = pictures[from]?.at[hidden.name];
  if (!first || !last.at[hidden.name]) return null;
  let at = first;
  let points = ringAround(first, hidden.diameterPx, others(pictures[from]?.at ?? {}, hidden.name));
  for (let i = from; i < pictures.length; i++) {
    const to = pictures[i + 1] ?? now;
    const seen = { from: pictures[i]?.at[hidden.name], to: to.at[hidden.name] };
    const known = seen.from && seen.to ? { from: seen.from, to: seen.to } : null;
    const step = oneStep(hidden, pictures[i] as SkinPicture, to, at, points, known);
    if (!step) return null;
    at = step.at;
    points = step.points;
  }
  return { at, skin: { tMs: now.tMs, points } };
}

/** @param at where the sticker is in `from`; `known`: where it was measured in both; null: it was not, and the points alone tell */
function oneStep(
  { diameterPx }: Hidden,
  from: SkinPicture,
  to: SkinPicture,
  at: Spot,
  points: readonly number[],
  known: { readonly from: Spot; readonly to: Spot } | null,
): { readonly at: Spot; readonly points: readonly number[] } | null {
  const [a, b] = [around(from.crop, at, diameterPx), around(to.crop, known?.to ?? at, diameterPx)];
  if (!a || !b) return null;
  const places = Float32Array.from(points);
  const { positions, status, closurePx, residual } = trackBothWays(a, b, places, OPTIONS);
  const along = (i: number): boolean =>
    !known ||
    Math.hypot(
      (positions[2 * i] as number) - (places[2 * i] as number) - (known.to.x - known.from.x),
      (positions[2 * i + 1] as number) - (places[2 * i + 1] as number) - (known.to.y - known.from.y),
    ) <= OTHERWISE_PX;
  const good = Array.from(
    status,
    (s, i) => s === TRACKED && (closurePx[i] as number) <= MAX_CLOSURE_PX && (residual[i] as number) <= MAX_RESIDUAL && along(i),
  );
  const options = { inlierPx: px(INLIER_PX), minInliers: LEAST_POINTS };
  const fit = fitRobustSimilarity(places, positions, options, good.map(Number));
  if (!fit.ok || fit.value.inlierCount < LEAST_SHARE * good.filter(Boolean).length) return null;
  const { motion, inliers } = fit.value;
  const [x, y] = movedPoint(motion, at.x, at.y);
  const kept = Array.from(inliers).flatMap((is, i) =>
    is === 1 ? [positions[2 * i] as number, positions[2 * i + 1] as number] : [],
  );
  return { at: { x, y }, points: kept };
}

const others = (at: SkinPicture['at'], name: StickerName): readonly Spot[] =>
  Object.entries(at).flatMap(([other, spot]) => (other === name ? [] : [spot]));

/** @param others no point's window may lie on these: another sticker goes its own way */
function ringAround({ x, y }: Spot, diameterPx: number, others: readonly Spot[]): readonly number[] {
  const clear = diameterPx / 2 + OPTIONS.windowPx / 2;
  return RINGS.flatMap((ring, k) =>
    Array.from({ length: POINTS_A_RING }, (_, i): readonly number[] => {
      const turn = (2 * Math.PI * (i + k / 2)) / POINTS_A_RING;
      const point = { x: x + ring * diameterPx * Math.cos(turn), y: y + ring * diameterPx * Math.sin(turn) };
      return others.every((o) => distance(o, point) > clear) ? [point.x, point.y] : [];
    }).flat(),
  );
}

function around(crop: Crop, { x, y }: Spot, diameterPx: number): Pyramid | null {
  const reach = skinMargin(diameterPx);
  const part = cropOf(crop, { x: x - reach - crop.originX, y: y - reach - crop.originY, width: 2 * reach, height: 2 * reach });
  return part
    ? buildPyramid({ ...part, originX: part.originX + crop.originX, originY: part.originY + crop.originY }, OPTIONS.levels)
    : null;
}
