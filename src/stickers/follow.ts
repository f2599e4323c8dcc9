import { type Ms, ms } from '../units.ts';
import { assign, type Choice } from './assign.ts';
import type { Blob } from './blob.ts';
import { followedLengths, lengthsOf, plausible, SEGMENTS, stretchOf, type UsualLengths } from './chains.ts';
import { type Look, lookAround } from './look.ts';
import { corrected, regained } from './regain.ts';
import type { RgbaPicture, Spot } from './rgba-picture.ts';
import type { Sticker } from './sticker-at.ts';
import type { StickerName } from './sticker-name.ts';
import { touching } from './touching.ts';
import { coastingTrack, expected, seenTrack, startTrack, type Track, touchingTrack } from './track.ts';

/** Stickers that are being followed; a value, never changed once made. */
export interface StickersState {
  readonly tMs: Ms;
  readonly tracks: readonly Track[];
  readonly usualPx: UsualLengths;
}

/** Where a sticker is in one frame. */
export interface SeenSticker {
  readonly at: Spot;
  /** Seen as a whole, or hidden for a moment and put where its motion leads. */
  readonly how: 'seen' | 'bridged';
  /** Standard error of the place, each way, px. */
  readonly errorPx: number;
}

/** What is wrong with a frame. */
export type FollowTrouble =
  | { readonly kind: 'lost'; readonly name: StickerName }
  /** Two stickers of one bone are `stretch` times as far apart as usual. */
  | { readonly kind: 'implausible'; readonly between: readonly [StickerName, StickerName]; readonly stretch: number };

export interface StickersStep {
  readonly state: StickersState;
  /** By name; null is lost. Names that are not followed are not in it. */
  readonly stickers: Readonly<Partial<Record<StickerName, SeenSticker | null>>>;
  readonly troubles: readonly FollowTrouble[];
}

/** A sticker may be hidden so long before it counts as lost, ms. Chosen: half a quick lift. */
export const BRIDGE_MS = 300;
/** Two that touch are told apart by their motion for at most so long, ms. Chosen. */
const TOUCH_MS = 2000;
/**
 * How far a sticker may be from where it is expected: a diameter, so much for each ms of the step, and less for each ms that it was hidden before, px a ms.
 * Chosen: twice as quick as a tip in a lift of a quarter second.
 */
const REACH_PX_A_MS = 0.35;
const HIDDEN_REACH_PX_A_MS = 0.1;
const MOST_REACH_PX = 90;
/** Standard error of a centre, each way, px; and how it grows while it is guessed, px a ms. Measured (tests/stickers) and chosen. */
export const CENTRE_ERROR_PX = 0.15;
const GUESS_ERROR_PX_A_MS = 0.02;

/** Begins to follow stickers that were found or learnt in the picture of `tMs`. */
export function startStickers(named: Readonly<Partial<Record<StickerName, Sticker>>>, tMs: Ms): StickersState {
  const tracks = (Object.entries(named) as [StickerName, Sticker][]).map(([name, sticker]) => startTrack(name, sticker, tMs));
  return { tMs, tracks, usualPx: lengthsOf((name) => named[name]?.at ?? null) };
}

/**
 * Follows stickers into the next picture. Looks only in windows around the expected places; the whole picture only for one that is lost.
 * @param tMs of the picture, later than the state's
 */
export function stepStickers(state: StickersState, picture: RgbaPicture, tMs: Ms): StickersStep {
  const dtMs = tMs - state.tMs;
  if (!(dtMs > 0)) throw new Error(`stepStickers requires a later time than ${state.tMs}, got ${tMs}`);
  const followed = state.tracks.filter((t) => !t.lost);
  const looks = new Map<StickerName, Look>();
  const choices = followed.map((track): Choice => {
    const place = expected(track, dtMs);
    const hiddenMs = state.tMs - track.seenMs;
    const reachPx = Math.min(MOST_REACH_PX, track.diameterPx + REACH_PX_A_MS * dtMs + HIDDEN_REACH_PX_A_MS * hiddenMs);
    const look = lookAround(picture, track, place, reachPx);
    looks.set(track.name, look);
    return { track, expected: place, reachPx, resumed: hiddenMs > 0, blobs: look.whole };
  });
  const { best } = assign(choices, state.usualPx);
  const shifts = touching(choices, best.blobs, (name) => looks.get(name)?.all ?? []);
  const after = new Map<StickerName, Track>();
  choices.forEach(({ track }, i) => {
    const blob = best.blobs[i] ?? null;
    const shift = shifts[i] ?? null;
    after.set(track.name, nextTrack(track, blob, shift, looks.get(track.name), tMs, dtMs));
  });
  const tracks = state.tracks.map((t) => after.get(t.name) ?? t);
  const found = regained(picture, corrected(picture, tracks, state.usualPx, tMs), state.usualPx, tMs);
  return finished(state, found, tMs, dtMs);
}

function nextTrack(track: Track, blob: Blob | null, shift: Spot | null, look: Look | undefined, tMs: Ms, dtMs: number): Track {
  if (shift && tMs - track.seenMs <= TOUCH_MS) return touchingTrack(track, dtMs, shift, tMs);
  if (blob) return seenTrack(track, blob, look?.groundAt(blob) ?? null, tMs, dtMs);
  const lost = tMs - track.vouchedMs > BRIDGE_MS;
  return { ...coastingTrack(track, dtMs), lost };
}

function finished(before: StickersState, tracks: readonly Track[], tMs: Ms, dtMs: number): StickersStep {
  const seenAt = (name: StickerName): Spot | null => tracks.find((t) => t.name === name && t.seenMs === tMs)?.at ?? null;
  const now = lengthsOf(seenAt);
  const troubles: FollowTrouble[] = tracks.filter((t) => t.lost).map(({ name }) => ({ kind: 'lost', name }));
  stretchOf(before.usualPx, now).forEach((stretch, i) => {
    const between = SEGMENTS[i];
    if (between && stretch !== null && !plausible(stretch)) troubles.push({ kind: 'implausible', between, stretch });
  });
  return {
    state: { tMs: ms(tMs), tracks, usualPx: followedLengths(before.usualPx, now, dtMs) },
    stickers: Object.fromEntries(tracks.map((t) => [t.name, t.lost ? null : seenSticker(t, tMs)])),
    troubles,
  };
}

const seenSticker = ({ at, seenMs }: Track, tMs: Ms): SeenSticker => ({
  at,
  how: seenMs === tMs ? 'seen' : 'bridged',
  errorPx: Math.hypot(CENTRE_ERROR_PX, GUESS_ERROR_PX_A_MS * (tMs - seenMs)),
});
