import type { Ms } from '../units.ts';
import type { Blob } from './blob.ts';
import type { Chroma } from './chroma.ts';
import { distance, type Spot } from './rgba-picture.ts';
import { sameColour } from './same-colour.ts';

/** A dot of a sticker's colour that is none of those followed: it was seen while they were, or where they cannot have been. */
export interface Stranger {
  readonly at: Spot;
  /** px a ms. */
  readonly velocity: Spot;
  readonly colour: Chroma;
  readonly seenMs: Ms;
}

/** How far a stranger may be from where its motion leads: so much, and so much a ms more. Chosen: as quick as what crosses a picture in a second. */
const REACH_PX = 4;
const REACH_PX_A_MS = 0.25;
/** Out of sight for longer, it is forgotten, ms. Chosen: as long as a sticker is guessed at. */
const KEPT_MS = 300;

const expectedAt = ({ at, velocity }: Stranger, dtMs: number): Spot => ({
  x: at.x + velocity.x * dtMs,
  y: at.y + velocity.y * dtMs,
});

/** Where the strangers are now: by stranger, the blob of its colour nearest to where it is expected; no blob twice. */
export function strangersIn(before: readonly Stranger[], blobs: readonly Blob[], dtMs: number): readonly (Blob | null)[] {
  const taken = new Set<Blob>();
  return before.map((stranger) => {
    const place = expectedAt(stranger, dtMs);
    const far = (blob: Blob): number => distance(blob.at, place);
    const near = blobs.filter(
      (b) => !taken.has(b) && sameColour(b.colour, stranger.colour) && far(b) <= REACH_PX + REACH_PX_A_MS * dtMs,
    );
    const nearest = near.reduce<Blob | null>((best, b) => (best === null || far(b) < far(best) ? b : best), null);
    if (nearest) taken.add(nearest);
    return nearest;
  });
}

/**
 * The strangers after a frame.
 * @param seen where those known before are, as `strangersIn` says; one that turned out to be a sticker is null
 * @param loose blobs that nothing was taken for, nor is a known stranger, and that no hidden sticker can be
 */
export function strangersAfter(
  before: readonly Stranger[],
  seen: readonly (Blob | null)[],
  loose: readonly Blob[],
  tMs: Ms,
  dtMs: number,
): readonly Stranger[] {
  const kept = before.flatMap((stranger, i): readonly Stranger[] => {
    const blob = seen[i];
    if (blob) {
      const velocity = { x: (blob.at.x - stranger.at.x) / dtMs, y: (blob.at.y - stranger.at.y) / dtMs };
      return [{ at: blob.at, velocity, colour: blob.colour, seenMs: tMs }];
    }
    return tMs - stranger.seenMs <= KEPT_MS ? [{ ...stranger, at: expectedAt(stranger, dtMs) }] : [];
  });
  const still = { x: 0, y: 0 };
  return [...kept, ...loose.map(({ at, colour }): Stranger => ({ at, velocity: still, colour, seenMs: tMs }))];
}
