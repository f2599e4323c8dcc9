import { type Blob, BURNT_LEVEL, blobsIn } from './blob.ts';
import { type Chroma, type ChromaPatch, chromaAround, chromaOf } from './chroma.ts';
import type { RgbaPicture, Spot } from './rgba-picture.ts';
import { sameColour } from './same-colour.ts';
import { MAX_GLARE, MIN_ROUNDNESS } from './sticker-at.ts';
import { surroundOf } from './surround.ts';
import type { Track } from './track.ts';

/** A whole sticker measures between these many times its diameter; less is partly hidden, more is two that touch. Chosen. */
const LEAST_SIZE = 0.82;
export const MOST_SIZE = 1.3;
/** One that a quick motion smears is an ellipse up to this much flatter than one at rest. Chosen. */
const SMEARED = 0.6;
/** Of stickers that were lost the size must fit closer: they may be anything of that colour. Chosen. */
const LOST_LEAST_SIZE = 0.72;
const LOST_MOST_SIZE = 1.35;

/** What a window shows of a track's colour. */
export interface Look {
  /** Blobs that may be the sticker, whole. */
  readonly whole: readonly Blob[];
  /** All blobs. */
  readonly all: readonly Blob[];
  /** The colour around a place in the window; null when that lies outside. */
  readonly groundAt: (blob: Blob) => Chroma | null;
  /** Share of the disc of the sticker's size at a place that is burnt to white. */
  readonly burntAt: (place: Spot) => number;
}

const NOTHING: Look = { whole: [], all: [], groundAt: () => null, burntAt: () => 0 };

/** Looks for a track's sticker within `reachPx` of a place. @param seenPx how far dots are seen, at least that */
export function lookAround(picture: RgbaPicture, track: Track, place: Spot, reachPx: number, seenPx = reachPx): Look {
  // Beyond the reach: half the sticker, and the ring around it.
  const patch = chromaAround(picture, place.x, place.y, Math.max(reachPx, seenPx) + 1.5 * track.diameterPx + 4);
  if (!patch) return NOTHING;
  const all = blobsIn(patch, track.pair);
  return {
    whole: all.filter(
      (b) => isWhole(b, track, LEAST_SIZE, MOST_SIZE) && Math.hypot(b.at.x - place.x, b.at.y - place.y) <= reachPx,
    ),
    all,
    groundAt: (blob) => surroundOf(patch, blob.at, blob.diameterPx, blob.colour),
    burntAt: (at) => burntShare(patch, at, track.diameterPx / 2),
  };
}

function isWhole({ cut, glare, roundness, diameterPx }: Blob, track: Track, least: number, most: number): boolean {
  const size = diameterPx / track.diameterPx;
  return !cut && glare <= MAX_GLARE && roundness >= SMEARED * MIN_ROUNDNESS && size >= least && size <= most;
}

/** Cells of the whole picture, px: as fine as finding needs. */
const WHOLE_STEP = 2;

/** Everything in the whole picture that may be one of these tracks, by track; tracks of one colour are looked for once. */
export function lookEverywhere(picture: RgbaPicture, tracks: readonly Track[]): readonly (readonly Blob[])[] {
  const whole = chromaOf(picture, WHOLE_STEP);
  const done: { readonly colour: Chroma; readonly blobs: readonly Blob[] }[] = [];
  return tracks.map((track) => {
    let known = done.find((d) => sameColour(d.colour, track.pair.sticker));
    if (!known) {
      const rough = blobsIn(whole, track.pair).filter(
        (b) =>
          b.diameterPx > LOST_LEAST_SIZE * track.diameterPx - WHOLE_STEP &&
          b.diameterPx < LOST_MOST_SIZE * track.diameterPx + WHOLE_STEP,
      );
      known = { colour: track.pair.sticker, blobs: rough.slice(0, MOST_CANDIDATES).flatMap((b) => fine(picture, track, b)) };
      done.push(known);
    }
    return known.blobs.filter((b) => isWhole(b, track, LOST_LEAST_SIZE, LOST_MOST_SIZE));
  });
}

/** Most candidates that are measured finely. Chosen: bounds the time in a room of that colour. */
const MOST_CANDIDATES = 12;

/** A blob found in coarse cells, measured in pixels. */
function fine(picture: RgbaPicture, track: Track, rough: Blob): readonly Blob[] {
  const patch = chromaAround(picture, rough.at.x, rough.at.y, 1.5 * track.diameterPx + 4);
  if (!patch) return [];
  const near = blobsIn(patch, track.pair).filter(
    (b) => Math.hypot(b.at.x - rough.at.x, b.at.y - rough.at.y) <= track.diameterPx / 2,
  );
  return near.slice(0, 1);
}

function burntShare({ least, width, originX, originY, step }: ChromaPatch, { x, y }: Spot, radiusPx: number): number {
  let inside = 0;
  let burnt = 0;
  least.forEach((level, i) => {
    if (Math.hypot(originX + step * (i % width) - x, originY + step * Math.floor(i / width) - y) > radiusPx) return;
    inside++;
    if (level >= BURNT_LEVEL) burnt++;
  });
  return inside === 0 ? 0 : burnt / inside;
}
