import type { Blob } from './blob.ts';
import { LENGTH_TOLERANCE, lengthsOf, SEGMENTS, stretchOf, type UsualLengths } from './chains.ts';
import { chromaDistance } from './chroma.ts';
import { distance, type Spot } from './rgba-picture.ts';
import type { StickerName } from './sticker-name.ts';
import type { Track } from './track.ts';

/** A track with the blobs that it may be. */
export interface Choice {
  readonly track: Track;
  readonly expected: Spot;
  /** How far from the expected place it may be, px. */
  readonly reachPx: number;
  /** It was not seen a frame ago. */
  readonly resumed: boolean;
  readonly blobs: readonly Blob[];
}

/** What became of all tracks: a blob each, or null, in the order of the choices. */
export interface Assignment {
  readonly blobs: readonly (Blob | null)[];
  readonly cost: number;
}

/** Costs are squares of a deviation over what is usual, so that 1 is a deviation at the limit. Chosen. */
const SIZE_LIMIT = Math.log(1.4);
const COLOUR_LIMIT = 0.3;
const LENGTH_LIMIT = Math.log(LENGTH_TOLERANCE);
/** Lengths that cannot be count no more than this between stickers that were both seen a frame ago: they are for the follower to report, and two paths may truly cross. Chosen: under UNSEEN_COST. */
const MOST_LENGTH_COST = 1.2;
/** What it costs to leave a sticker unseen: worse than one deviation at the limit, better than two. Chosen. */
const UNSEEN_COST = 1.5;

/**
 * The assignment of blobs to tracks with the least cost, and the next best that gives some track another blob. No blob goes to two tracks.
 * @param usual lengths of the segments, for the pairs of tracks that make one
 */
export function assign(
  choices: readonly Choice[],
  usual: UsualLengths,
): { readonly best: Assignment; readonly next: Assignment | null } {
  let best: Assignment = { blobs: choices.map(() => null), cost: Number.POSITIVE_INFINITY };
  let next: Assignment | null = null;
  const taken: (Blob | null)[] = [];
  const visit = (cost: number): void => {
    const i = taken.length;
    if (next && cost >= next.cost) return;
    const choice = choices[i];
    if (!choice) {
      const full = { blobs: [...taken], cost: cost + lengthCost(choices, taken, usual) };
      if (full.cost < best.cost) {
        next = best.cost < Number.POSITIVE_INFINITY ? best : next;
        best = full;
      } else if (!next || full.cost < next.cost) next = full;
      return;
    }
    for (const blob of choice.blobs) {
      if (taken.some((t) => t && distance(t.at, blob.at) < Math.min(t.diameterPx, blob.diameterPx) / 2)) continue;
      taken.push(blob);
      visit(cost + blobCost(choice, blob));
      taken.pop();
    }
    taken.push(null);
    visit(cost + UNSEEN_COST);
    taken.pop();
  };
  visit(0);
  return { best, next };
}

function blobCost({ track, expected, reachPx }: Choice, blob: Blob): number {
  return (
    (distance(blob.at, expected) / reachPx) ** 2 +
    (Math.log(blob.diameterPx / track.diameterPx) / SIZE_LIMIT) ** 2 +
    (chromaDistance(blob.colour, track.pair.sticker) / COLOUR_LIMIT) ** 2
  );
}

function lengthCost(choices: readonly Choice[], taken: readonly (Blob | null)[], usual: UsualLengths): number {
  const indexOf = (name: StickerName): number => choices.findIndex((c) => c.track.name === name);
  const at = (name: StickerName): Spot | null => taken[indexOf(name)]?.at ?? null;
  const astray = (name: StickerName): boolean => {
    const choice = choices[indexOf(name)];
    const spot = at(name);
    return !!choice?.resumed && !!spot && distance(spot, choice.expected) > choice.track.diameterPx;
  };
  let continued = 0;
  let resumed = 0;
  stretchOf(usual, lengthsOf(at)).forEach((s, i) => {
    if (s === null) return;
    const cost = (Math.log(s) / LENGTH_LIMIT) ** 2;
    // What shows up after a gap elsewhere than expected may be anything of that colour: its distances must fit.
    if (SEGMENTS[i]?.some(astray)) resumed += cost;
    else continued += cost;
  });
  return resumed + Math.min(MOST_LENGTH_COST, continued);
}
