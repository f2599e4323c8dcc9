import { type Ms, ms } from '../units.ts';
import type { ColourPair } from './belonging.ts';
import { chromaContrast } from './belonging.ts';
import type { Blob } from './blob.ts';
import { between, type Chroma, chromaDistance } from './chroma.ts';
import type { Spot } from './rgba-picture.ts';
import type { Rim } from './rim.ts';
import type { SkinAround } from './skin-flow.ts';
import { MIN_CONTRAST, type Sticker } from './sticker-at.ts';
import type { StickerName } from './sticker-name.ts';

/** One sticker that is followed. */
export interface Track {
  readonly name: StickerName;
  /** As it was learnt; what it looks like now may not go far from that. */
  readonly learnt: ColourPair;
  readonly pair: ColourPair;
  readonly diameterPx: number;
  /** Usual radius of its rim in brightness, px; null: not seen yet. */
  readonly rimPx: number | null;
  /** Where it is, or is thought to be. */
  readonly at: Spot;
  /** px a ms. */
  readonly velocity: Spot;
  /** When it was last measured. */
  readonly seenMs: Ms;
  /** When something last spoke for its place: it was measured, or was seen to touch another sticker of its colour. */
  readonly vouchedMs: Ms;
  readonly lost: boolean;
  /** Taken up again in this picture, away from where it was thought to be: the next one has to bear it out. */
  readonly doubted: boolean;
  /** How far a guessed place may be out, beyond a measured one, standard error each way, px; 0 where it was measured. */
  readonly guessErrorPx: number;
  /** The skin around it, followed while it is hidden. */
  readonly skin: SkinAround | null;
}

/** Time constants, ms. Chosen: light drifts in seconds, ground changes as fast as a toe moves, a size as fast as a foot comes nearer. */
const COLOUR_MS = 800;
const SURROUND_MS = 150;
const SIZE_MS = 1500;
/** A hidden sticker's motion dies down with this time constant, ms. Chosen: half a quick lift. */
const COASTING_MS = 200;
/** Share of a new velocity that is taken on. Chosen: noise of 0.1 px between two frames makes little of a motion. */
const VELOCITY_SHARE = 0.6;
/** What guessing adds to a place's standard error, px a ms; what a frame of followed skin adds to it, px, in squares. Measured on drawn feet (tests/stickers/covered.test.ts), rounded up. */
const GUESS_ERROR_PX_A_MS = 0.02;
const CARRIED_ERROR_PX = 0.25;
/** How far a colour may drift from the learnt one, as a share of its contrast then. Chosen. */
const MAX_DRIFT_SHARE = 0.45;

export const startTrack = (name: StickerName, { at, diameterPx, pair }: Sticker, tMs: Ms): Track => ({
  name,
  learnt: pair,
  pair,
  diameterPx,
  rimPx: null,
  at,
  velocity: { x: 0, y: 0 },
  seenMs: tMs,
  vouchedMs: tMs,
  lost: false,
  doubted: false,
  guessErrorPx: 0,
  skin: null,
});

/** Where a track is expected `dtMs` later. */
export const expected = ({ at, velocity }: Track, dtMs: number): Spot => ({
  x: at.x + velocity.x * dtMs,
  y: at.y + velocity.y * dtMs,
});

/** The track after it was measured. @param rim where its rim says that it is; null: only its colour tells @param ground what the ring around it shows now */
export function seenTrack(track: Track, blob: Blob, rim: Rim | null, ground: Chroma | null, tMs: Ms, dtMs: number): Track {
  const elapsed = tMs - track.seenMs;
  const at = rim?.at ?? blob.at;
  // After a hole the way since the last measurement tells the motion better than the last step from a guess.
  const fresh = elapsed > dtMs ? { x: 0, y: 0 } : { x: (at.x - track.at.x) / dtMs, y: (at.y - track.at.y) / dtMs };
  const share = elapsed > dtMs ? 0.5 : VELOCITY_SHARE;
  const { velocity } = track;
  return {
    ...track,
    pair: adapted(track, blob.colour, ground, dtMs),
    diameterPx: track.diameterPx + eased(dtMs, SIZE_MS) * (blob.diameterPx - track.diameterPx),
    rimPx: rim
      ? (track.rimPx ?? rim.radiusPx) + eased(dtMs, SIZE_MS) * (rim.radiusPx - (track.rimPx ?? rim.radiusPx))
      : track.rimPx,
    at,
    velocity: {
      x: velocity.x + share * (fresh.x - velocity.x),
      y: velocity.y + share * (fresh.y - velocity.y),
    },
    seenMs: tMs,
    vouchedMs: tMs,
    lost: false,
    doubted: false,
    guessErrorPx: 0,
    skin: null,
  };
}

/** The track of a hidden sticker: on its way, slowing down. @param aside how far its neighbours have gone from their own way since the frame before */
export function coastingTrack(track: Track, dtMs: number, aside: Spot): Track {
  const kept = 1 - eased(dtMs, COASTING_MS);
  const { velocity } = track;
  const { x, y } = expected(track, dtMs);
  return {
    ...track,
    at: { x: x + aside.x, y: y + aside.y },
    velocity: { x: kept * velocity.x, y: kept * velocity.y },
    guessErrorPx: track.guessErrorPx + GUESS_ERROR_PX_A_MS * dtMs,
    skin: null,
  };
}

/** The track of a hidden sticker whose skin was followed. */
export const carriedTrack = (track: Track, at: Spot, skin: SkinAround, tMs: Ms, dtMs: number): Track => ({
  ...track,
  at,
  velocity: { x: (at.x - track.at.x) / dtMs, y: (at.y - track.at.y) / dtMs },
  vouchedMs: tMs,
  guessErrorPx: Math.hypot(track.guessErrorPx, CARRIED_ERROR_PX),
  skin,
});

/** The track of a sticker that touches another of its colour: the two together are where they should be, or are moved there. */
export const touchingTrack = (track: Track, dtMs: number, shift: Spot, tMs: Ms): Track => {
  const { x, y } = expected(track, dtMs);
  return {
    ...track,
    at: { x: x + shift.x, y: y + shift.y },
    vouchedMs: ms(tMs),
    guessErrorPx: track.guessErrorPx + GUESS_ERROR_PX_A_MS * dtMs,
  };
};

/** Share of the way that a value with a time constant goes in a step. */
const eased = (dtMs: number, constantMs: number): number => 1 - Math.exp(-dtMs / constantMs);

/** Colours after a frame: they follow the light, but neither far from what was learnt nor towards the ground. */
function adapted({ learnt, pair }: Track, colour: Chroma, ground: Chroma | null, dtMs: number): ColourPair {
  const contrast = chromaContrast(learnt);
  const sticker = between(pair.sticker, colour, eased(dtMs, COLOUR_MS));
  const surround = ground ? between(pair.surround, ground, eased(dtMs, SURROUND_MS)) : pair.surround;
  const nearLearnt = chromaDistance(sticker, learnt.sticker) <= MAX_DRIFT_SHARE * contrast;
  const next: ColourPair = { sticker: nearLearnt ? sticker : pair.sticker, surround };
  return chromaContrast(next) >= Math.max(MIN_CONTRAST, contrast / 2) ? next : pair;
}
