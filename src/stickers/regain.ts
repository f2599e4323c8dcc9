import { type Ms, ms } from '../units.ts';
import { assign, type Choice } from './assign.ts';
import type { Blob } from './blob.ts';
import { lengthsOf, plausible, SEGMENTS, stretchOf, type UsualLengths } from './chains.ts';
import { lookEverywhere } from './look.ts';
import { distance, type RgbaPicture, type Spot } from './rgba-picture.ts';
import { sameColour } from './same-colour.ts';
import type { StickerName } from './sticker-name.ts';
import type { Track } from './track.ts';

/** An assignment must be better than the next by this much to be believed. Chosen: half of a deviation at the limit. */
const CLEAR_COST = 0.5;

/** Whether a dot may be a sticker, and is not known to be something else. */
export type MayBe = (blob: Blob) => boolean;

export interface Regained {
  readonly tracks: readonly Track[];
  /** All dots of a lost sticker's colour and size. */
  readonly dots: readonly Blob[];
}

/**
 * Looks in the whole picture for stickers that are lost. One is taken up again when it lies as far from its neighbours as usual and nothing else could be it.
 * A sticker without a neighbour in sight is taken up only when it is the only one of its colour.
 */
export function regained(
  picture: RgbaPicture,
  tracks: readonly Track[],
  usual: UsualLengths,
  tMs: Ms,
  mayBe: MayBe = () => true,
): Regained {
  const lost = tracks.filter((t) => t.lost);
  if (lost.length === 0) return { tracks, dots: [] };
  const seen = tracks.filter((t) => t.seenMs === tMs);
  const reachPx = Math.hypot(picture.width, picture.height) / 2;
  const all = lookEverywhere(picture, lost);
  const dots = all.flat();
  const found = all.map((blobs) =>
    blobs.filter((b) => mayBe(b) && tracks.every((t) => t.lost || distance(t.at, b.at) > t.diameterPx / 2)),
  );
  const none: Regained = { tracks, dots };
  const choices: readonly Choice[] = [
    ...seen.map((track): Choice => ({ track, expected: track.at, reachPx, resumed: false, blobs: [asBlob(track)] })),
    ...lost.map((track, i): Choice => ({ track, expected: track.at, reachPx, resumed: true, blobs: found[i] ?? [] })),
  ];
  const { best, next } = assign(choices, usual);
  const differs = next?.blobs.some((b, i) => b !== null && best.blobs[i] !== null && b !== best.blobs[i]) ?? false;
  if (next && differs && next.cost - best.cost < CLEAR_COST) return none;
  const at = (name: StickerName): Spot | null => best.blobs[choices.findIndex((c) => c.track.name === name)]?.at ?? null;
  const stretch = stretchOf(usual, lengthsOf(at));
  if (stretch.some((s) => s !== null && !plausible(s))) return none;
  const after = tracks.map((track) => {
    const k = lost.indexOf(track);
    const blob = k < 0 ? null : (best.blobs[seen.length + k] ?? null);
    if (!blob) return track;
    const held = SEGMENTS.some(
      (names, i) => (names as readonly StickerName[]).includes(track.name) && (stretch[i] ?? null) !== null,
    );
    const alone = (found[k] ?? []).length === 1 && onlyOfItsColour(track, tracks);
    return held || alone ? takenUp(track, blob, tMs) : track;
  });
  return { tracks: after, dots };
}

/**
 * Where stickers of one bone are too far apart or too near, one of them may follow another thing of its colour: they are looked for anew, and kept as they
 * are when that finds no better three.
 */
export function corrected(
  picture: RgbaPicture,
  tracks: readonly Track[],
  usual: UsualLengths,
  tMs: Ms,
  mayBe: MayBe,
): readonly Track[] {
  const at = (name: StickerName): Spot | null => tracks.find((t) => t.name === name && t.seenMs === tMs)?.at ?? null;
  const stretch = stretchOf(usual, lengthsOf(at));
  const doubtful = new Set(SEGMENTS.flatMap((names, i): readonly StickerName[] => (plausible(stretch[i] ?? 1) ? [] : names)));
  if (doubtful.size === 0) return tracks;
  const before = (t: Track): Track => ({ ...t, lost: true, seenMs: ms(Math.min(t.seenMs, tMs - 1)) });
  const { tracks: anew } = regained(
    picture,
    tracks.map((t) => (doubtful.has(t.name) ? before(t) : t)),
    usual,
    tMs,
    mayBe,
  );
  return anew.some((t) => doubtful.has(t.name) && t.lost) ? tracks : anew;
}

const onlyOfItsColour = (track: Track, tracks: readonly Track[]): boolean =>
  tracks.every((t) => t === track || !sameColour(t.pair.sticker, track.pair.sticker));

const takenUp = (track: Track, blob: Blob, tMs: Ms): Track => ({
  ...track,
  at: blob.at,
  diameterPx: blob.diameterPx,
  velocity: { x: 0, y: 0 },
  seenMs: tMs,
  vouchedMs: tMs,
  lost: false,
  doubted: true,
  guessErrorPx: track.diameterPx,
  skin: null,
});

/** A track that was measured in this picture, as the only blob that it may be. */
const asBlob = ({ at, diameterPx, pair }: Track): Blob => ({
  at,
  diameterPx,
  colour: pair.sticker,
  roundness: 1,
  glare: 0,
  cut: false,
});
