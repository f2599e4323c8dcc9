import { type Ms, ms } from '../units.ts';
import { assign, type Choice } from './assign.ts';
import type { Blob } from './blob.ts';
import { followedLengths, lengthsOf, SEGMENTS, type UsualLengths } from './chains.ts';
import { chromaDistance } from './chroma.ts';
import { apart, isMoving, isOneOf } from './dots.ts';
import { type FollowTrouble, troublesOf } from './follow-trouble.ts';
import { type Look, lookAround } from './look.ts';
import { corrected, type MayBe, regained } from './regain.ts';
import { distance, type RgbaPicture, type Spot } from './rgba-picture.ts';
import { rimSeen } from './rim-seen.ts';
import { sameColour } from './same-colour.ts';
import { KEPT_PICTURES, type SkinFlow, type SkinPicture, skinFlow, skinMargin, skinPicture } from './skin-flow.ts';
import { type SteadyLengths, steadyAfter } from './steady-lengths.ts';
import type { Sticker } from './sticker-at.ts';
import type { StickerName } from './sticker-name.ts';
import { type Stranger, strangersAfter, strangersIn } from './strangers.ts';
import { touching } from './touching.ts';
import { carriedTrack, coastingTrack, expected, seenTrack, startTrack, type Track, touchingTrack } from './track.ts';
import type { UnseenReason } from './unseen-reason.ts';
import { type Hinders, type Unseen, unseenAfter, unseenWhy } from './unseen-why.ts';

/** Stickers that are being followed; a value, never changed once made. */
export interface StickersState {
  readonly tMs: Ms;
  readonly tracks: readonly Track[];
  readonly usualPx: UsualLengths;
  readonly steadyPx: SteadyLengths;
  /** What else has a sticker's colour. */
  readonly strangers: readonly Stranger[];
  /** Dots of a lost sticker's colour that were not taken up in the last picture. */
  readonly dots: readonly Spot[];
  /** The last pictures of the skin, newest last. */
  readonly pictures: readonly SkinPicture[];
  /** What hid stickers that are not measured. */
  readonly hinders: Hinders;
}

/** Where a sticker is in one frame. */
export interface SeenSticker {
  readonly at: Spot;
  /** Seen as a whole; or hidden for a moment and put where the skin around it went, or its own motion leads; or back this very moment, and not yet sure to be it. */
  readonly how: 'seen' | 'bridged';
  /** Standard error of the place, each way, px. */
  readonly errorPx: number;
}

export interface StickersStep {
  readonly state: StickersState;
  /** By name; null is lost. Names that are not followed are not in it. */
  readonly stickers: Readonly<Partial<Record<StickerName, SeenSticker | null>>>;
  readonly troubles: readonly FollowTrouble[];
  /** Why those that were not measured were not; by name. */
  readonly unseen: Unseen;
}

/** A sticker may be hidden so long, and nothing around it followed, before it counts as lost, ms. Chosen: half a quick lift. */
export const BRIDGE_MS = 300;
/** Followed by the skin around it, one may be hidden for so long, ms. Chosen: what skin is out by has come to half a pixel and more. */
const CARRY_MS = 1000;
/** Two that touch are told apart by their motion for at most so long, ms. Chosen. */
const TOUCH_MS = 2000;
/**
 * How far a sticker may be from where it is expected: a diameter, so much for each ms of the step, and less for each ms that it was hidden before, px a ms.
 * Chosen: twice as quick as a tip in a lift of a quarter second.
 */
const REACH_PX_A_MS = 0.35;
const HIDDEN_REACH_PX_A_MS = 0.1;
const MOST_REACH_PX = 90;
/** What is taken up after a moment out of sight lies within half a diameter of where it is expected, so many standard errors of that place, and so much a ms of the step. Chosen. */
const BACK_SIGMAS = 3;
const BACK_PX_A_MS = 0.1;
/** Standard error of a centre, each way, px. Measured (tests/stickers) and chosen. */
export const CENTRE_ERROR_PX = 0.15;

const NOTHING_YET = { steadyPx: [], strangers: [], dots: [], pictures: [], hinders: {} };

/** Begins to follow stickers that were found or learnt in the picture of `tMs`. */
export function startStickers(named: Readonly<Partial<Record<StickerName, Sticker>>>, tMs: Ms): StickersState {
  const tracks = (Object.entries(named) as [StickerName, Sticker][]).map(([name, sticker]) => startTrack(name, sticker, tMs));
  return { tMs, tracks, usualPx: lengthsOf((name) => named[name]?.at ?? null), ...NOTHING_YET };
}

/** A track that is not lost, on its way into the next picture. */
interface OnItsWay extends Choice {
  readonly look: Look;
  /** Where the skin around it has gone; null: it was seen a frame ago, or the skin does not tell. */
  readonly flow: SkinFlow | null;
}

/**
 * Follows stickers into the next picture. Looks only in windows around the expected places; the whole picture only for one that is lost.
 * @param tMs of the picture, later than the state's
 */
export function stepStickers(state: StickersState, picture: RgbaPicture, tMs: Ms): StickersStep {
  const dtMs = tMs - state.tMs;
  if (!(dtMs > 0)) throw new Error(`stepStickers requires a later time than ${state.tMs}, got ${tMs}`);
  const skin = skinOf(state, picture, tMs);
  const looked = state.tracks.filter((t) => !t.lost).map((track) => onItsWay(state, track, picture, skin, dtMs));
  const seenDots = apart(looked.flatMap(({ look }) => look.all.filter((b) => !b.cut)));
  const strange = strangersIn(state.strangers, seenDots, dtMs);
  const choices = looked.map((c) => (c.resumed ? { ...c, blobs: c.blobs.filter((b) => !isOneOf(strange, b)) } : c));
  const { best } = assign(choices, state.usualPx);
  const shifts = touching(choices, best.blobs, (name) => looked.find((c) => c.track.name === name)?.look.all ?? []);
  const ways = choices.flatMap((c, i): readonly Way[] => {
    const blob = best.blobs[i];
    return blob && !c.resumed ? [{ at: blob.at, by: { x: blob.at.x - c.expected.x, y: blob.at.y - c.expected.y } }] : [];
  });
  const aside = meanOf(ways.map((w) => w.by));
  const moment: Moment = { state, picture, choices, skin, ways, tMs, dtMs };
  const after = new Map<StickerName, Track>();
  choices.forEach((choice, i) => {
    after.set(choice.track.name, nextTrack(choice, best.blobs[i] ?? null, shifts[i] ?? null, moment));
  });
  const tracks = state.tracks.map((t) => after.get(t.name) ?? t);
  const known: MayBe = (blob) => !isOneOf(strange, blob);
  const still: MayBe = (blob) => known(blob) && !isMoving(blob, state.dots, aside, dtMs);
  const right = corrected(picture, tracks, state.usualPx, tMs, known);
  const { tracks: found, dots } = regained(picture, right, state.usualPx, tMs, still);
  const seen = found.filter((t) => t.seenMs === tMs);
  const free = (blob: Blob): boolean => seen.every((t) => distance(t.at, blob.at) > t.diameterPx / 2);
  const whole = (b: Blob): boolean =>
    found.some((t) => sameColour(b.colour, t.pair.sticker) && b.diameterPx > WHOLE_SHARE * t.diameterPx);
  const loose = seenDots.filter((b) => whole(b) && free(b) && !isOneOf(strange, b) && !looked.some((c) => mayHide(c, found, b)));
  const unseen = found.flatMap((t) => (t.seenMs === tMs ? [] : [[t.name, whyUnseen(t, picture, looked, shifts)] as const]));
  return finished(state, found, {
    tMs,
    dtMs,
    ...unseenAfter(state.hinders, Object.fromEntries(unseen), tMs),
    strangers: strangersAfter(
      state.strangers,
      strange.map((b) => (b && free(b) ? b : null)),
      loose,
      tMs,
      dtMs,
    ),
    dots: dots.filter(free).map((b) => b.at),
    skin: skin && { ...skin, at: Object.fromEntries(seen.map((t) => [t.name, t.at])) },
  });
}

/** The luma around the stickers, for when one of them is hidden. */
function skinOf({ tracks }: StickersState, picture: RgbaPicture, tMs: Ms): SkinPicture | null {
  const followed = tracks.filter((t) => !t.lost);
  const margin = skinMargin(Math.max(0, ...followed.map((t) => t.diameterPx)));
  const crop = skinPicture(
    picture,
    followed.map((t) => t.at),
    margin,
  );
  return crop && { tMs, crop, at: {} };
}

function onItsWay(state: StickersState, track: Track, picture: RgbaPicture, skin: SkinPicture | null, dtMs: number): OnItsWay {
  const hiddenMs = state.tMs - track.seenMs;
  const resumed = hiddenMs > 0;
  const flow = resumed && track.skin && skin ? skinFlow(track, state.pictures, skin) : null;
  const place = flow?.at ?? expected(track, dtMs);
  const seenPx = Math.min(MOST_REACH_PX, track.diameterPx + REACH_PX_A_MS * dtMs + HIDDEN_REACH_PX_A_MS * hiddenMs);
  const backPx = track.diameterPx / 2 + BACK_SIGMAS * track.guessErrorPx + BACK_PX_A_MS * dtMs;
  const reachPx = resumed ? Math.min(seenPx, backPx) : seenPx;
  const look = lookAround(picture, track, place, reachPx, seenPx);
  return { track, expected: place, reachPx: seenPx, resumed, blobs: look.whole, look, flow };
}

/** How far a sticker that is seen has gone from its own way. */
interface Way {
  readonly at: Spot;
  readonly by: Spot;
}

interface Moment {
  readonly state: StickersState;
  readonly picture: RgbaPicture;
  readonly choices: readonly Choice[];
  readonly skin: SkinPicture | null;
  readonly ways: readonly Way[];
  readonly tMs: Ms;
  readonly dtMs: number;
}

function nextTrack(choice: OnItsWay, blob: Blob | null, shift: Spot | null, moment: Moment): Track {
  const { track, look, flow, resumed } = choice;
  const { state, picture, choices, skin, ways, tMs, dtMs } = moment;
  if (shift && tMs - track.seenMs <= TOUCH_MS) return touchingTrack(track, dtMs, shift, tMs);
  if (blob) return seenTrack(track, blob, rimSeen(picture, choice, blob, choices), look.groundAt(blob), tMs, dtMs);
  const carried = flow ?? (!resumed && skin ? skinFlow(track, state.pictures, skin) : null);
  if (carried && tMs - track.seenMs <= CARRY_MS) return carriedTrack(track, carried.at, carried.skin, tMs, dtMs);
  const lost = tMs - track.vouchedMs > BRIDGE_MS;
  // A neighbour that lies over it seems to move by what it hides.
  const clear = ways.filter((w) => distance(w.at, track.at) > 1.5 * track.diameterPx);
  return { ...coastingTrack(track, dtMs, meanOf(clear.map((w) => w.by))), lost };
}

/** Whether a dot may be a sticker that is hidden, or lost: then it is not known to be a stranger. */
function mayHide({ track, expected: place, reachPx }: OnItsWay, after: readonly Track[], blob: Blob): boolean {
  const now = after.find((t) => t.name === track.name);
  if (!now || now.seenMs > track.seenMs || chromaDistance(blob.colour, track.pair.sticker) > LIKE) return false;
  return now.lost || distance(blob.at, place) <= reachPx;
}

function whyUnseen(
  track: Track,
  picture: RgbaPicture,
  looked: readonly OnItsWay[],
  shifts: readonly (Spot | null)[],
): UnseenReason {
  const i = looked.findIndex((c) => c.track.name === track.name);
  const look = looked[i]?.look ?? lookAround(picture, track, track.at, track.diameterPx);
  return unseenWhy(track, look, (shifts[i] ?? null) !== null);
}

/** What peeps out beside a cover shows its colour blurred with the cover's: within this, in units of chroma, it may be the sticker still. Chosen: twice what shade does. */
const LIKE = 0.44;
/** Only a dot of nearly a sticker's size is a stranger: less may be a sticker's rim. Chosen. */
const WHOLE_SHARE = 0.8;
const meanOf = (ways: readonly Spot[]): Spot => ({
  x: ways.reduce((sum, w) => sum + w.x, 0) / Math.max(1, ways.length),
  y: ways.reduce((sum, w) => sum + w.y, 0) / Math.max(1, ways.length),
});
interface Found extends Pick<StickersState, 'tMs' | 'strangers' | 'dots' | 'hinders'>, Pick<StickersStep, 'unseen'> {
  readonly dtMs: number;
  readonly skin: SkinPicture | null;
}

function finished(before: StickersState, tracks: readonly Track[], found: Found): StickersStep {
  const { tMs, dtMs, unseen, hinders, strangers, dots, skin } = found;
  const seenAt = (name: StickerName): Spot | null => tracks.find((t) => t.name === name && t.seenMs === tMs)?.at ?? null;
  const now = lengthsOf(seenAt);
  const troubles = troublesOf(tracks, before.usualPx, before.steadyPx, now, tMs);
  const believed = (i: number) => !troubles.some((t) => t.kind === 'implausible' && t.between === SEGMENTS[i]);
  const usualPx = followedLengths(before.usualPx, now, dtMs);
  const steadyPx = steadyAfter(before.steadyPx, now, believed, tMs);
  const pictures = skin ? [...before.pictures, skin].slice(-KEPT_PICTURES) : [];
  return {
    state: { tMs: ms(tMs), tracks, usualPx, steadyPx, strangers, dots, pictures, hinders },
    stickers: Object.fromEntries(tracks.map((t) => [t.name, t.lost ? null : seenSticker(t, tMs)])),
    troubles,
    unseen,
  };
}

const seenSticker = ({ at, seenMs, doubted, guessErrorPx }: Track, tMs: Ms): SeenSticker => ({
  at,
  how: seenMs === tMs && !doubted ? 'seen' : 'bridged',
  errorPx: Math.hypot(CENTRE_ERROR_PX, guessErrorPx),
});
