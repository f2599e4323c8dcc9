import type { JointAngle } from '../angles/joint-angle.ts';
import type { Picture, QuarterTurn } from '../capture/frame.ts';
import { type Rgba, RgbaReader } from '../capture/rgba.ts';
import type { Grey } from '../flow/grey.ts';
import type { Observation } from '../measure/observation.ts';
import type { StickersSeen } from '../measure/stickers-seen.ts';
import { ok, type Result } from '../result.ts';
import type { ToeOrder } from '../stickers/arrange.ts';
import { arrangeAnkle } from '../stickers/arrange-ankle.ts';
import { type Chroma, chromaOfColour } from '../stickers/chroma.ts';
import { findStickers } from '../stickers/find-stickers.ts';
import { type StickersState, startStickers, stepStickers } from '../stickers/follow.ts';
import { learnColour } from '../stickers/learn-colour.ts';
import type { StickerRefusal } from '../stickers/refusal.ts';
import type { Spot } from '../stickers/rgba-picture.ts';
import { type SkinRefusal, type SkinState, startSkinPoints, stepSkinPoints } from '../stickers/skin-points.ts';
import type { Sticker } from '../stickers/sticker-at.ts';
import { type Ms, ms } from '../units.ts';
import { fromFull, namedWith, seenToFull, stickerFromFull, stickerToFull } from './sticker-scale.ts';
import type { NamedStickers, StickerStart, StickerTask } from './sticker-start.ts';

/** A wider picture is made smaller: a sticker of 12 mm on a foot that fills it is 30 px across then, and a frame takes a few ms. Chosen. */
const MOST_WIDTH_PX = 640;
/** What was found in another picture is taken to have been seen so long before a set's first one, ms. Chosen: a frame of a camera. */
const BEFORE_FIRST_MS = 33;
/** All stickers lost for so long: they are looked for anew, ms. Chosen: a foot that was put elsewhere. */
const GONE_MS = 1500;
/** Nothing found: the next look comes so much later, ms. Chosen: a look takes some 50 ms, and nobody notices a sixth of a second. */
const SEARCH_EVERY_MS = 160;
/** Brightness is read from every n-th pixel; neighbours tell the same. */
const BRIGHTNESS_STEP = 97;

/** What is known of stickers that are looked for. */
export interface StickerHint {
  /** Which way the toes point; null: not known. It decides which end is the toe where the lengths are alike. */
  readonly toes: 'left' | 'right' | null;
  /** As `#rrggbb`; null: any. */
  readonly colour: string | null;
}

/** Stickers in pictures behind one door: everything that needs pixels. Lives in a worker of its own; all places are px of the upright picture. */
export class StickerService {
  private readonly reader = new RgbaReader();
  private task: StickerTask | null = null;
  private following: StickersState | null = null;
  private skin: SkinState | null = null;
  private seenMs: Ms | null = null;
  private searchedMs: Ms | null = null;

  here(): true {
    return true;
  }

  /** The stickers of a joint, found by themselves. Closes `image`. */
  find(image: Picture, turn: QuarterTurn, angle: JointAngle, hint: StickerHint): Result<NamedStickers, StickerRefusal> {
    return this.with(image, turn, (picture) => {
      const found = found3(picture, angle, hint);
      return found.ok ? ok(namedWith(found.value, (s) => stickerToFull(s, picture.scale))) : found;
    });
  }

  /** The sticker that was tapped on. Closes `image`. @param tap px of the upright picture */
  learn(image: Picture, turn: QuarterTurn, tap: Spot): Result<Sticker, StickerRefusal> {
    return this.with(image, turn, (picture) => {
      const found = learnColour(picture, fromFull(tap, picture.scale));
      return found.ok ? ok(stickerToFull(found.value, picture.scale)) : found;
    });
  }

  /** Takes note of three points on bare skin, tapped while the toe rests; a set that starts with `skin` follows them. Closes `image`. */
  tapSkin(image: Picture, turn: QuarterTurn, spots: ToeOrder<Spot>): Result<null, SkinRefusal> {
    return this.with(image, turn, (picture) => {
      const at = (name: keyof ToeOrder<Spot>) => fromFull(spots[name], picture.scale);
      const begun = startSkinPoints(greyOf(picture), { tip: at('tip'), knuckle: at('knuckle'), arch: at('arch') }, ms(0));
      if (!begun.ok) return begun;
      this.skin = begun.value;
      return ok(null);
    });
  }

  /** Starts a set, or a look at the stickers before it. @throws Error for a start with skin before it was tapped */
  begin(task: StickerTask): void {
    if (task.start.kind === 'skin' && !this.skin) throw new Error('begin requires points on skin that were tapped, got none');
    this.task = task;
    this.following = null;
    this.seenMs = null;
    this.searchedMs = null;
  }

  /** Looks at the next frame of the set. Closes `image`. */
  observe(image: Picture, turn: QuarterTurn, tMs: Ms): Observation {
    return this.with(image, turn, (picture) => ({
      tMs,
      landmarks: null,
      motion: null,
      camera: null,
      brightness: brightnessOf(picture),
      stickers: this.look(picture, tMs),
    }));
  }

  private look(picture: Rgba, tMs: Ms): StickersSeen | null {
    const { task } = this;
    if (!task) throw new Error('observe requires a set that has begun, got none');
    if (task.start.kind === 'skin') return this.lookAtSkin(picture, tMs);
    const before = this.following ?? startFrom(task.start, picture, tMs);
    if (!before || (task.start.kind === 'find' && tMs - (this.seenMs ?? tMs) > GONE_MS)) return this.search(picture, task, tMs);
    const { state, stickers, troubles, unseen } = stepStickers(before, picture, tMs);
    this.following = state;
    if (Object.values(stickers).some((s) => s !== null)) this.seenMs = tMs;
    return seenToFull(
      stickers,
      troubles.some(({ kind }) => kind === 'implausible'),
      picture.scale,
      unseen,
    );
  }

  /** Looks for stickers that nobody has shown, until they are found. */
  private search(picture: Rgba, { angle, start }: StickerTask, tMs: Ms): StickersSeen | null {
    if (this.searchedMs !== null && tMs - this.searchedMs < SEARCH_EVERY_MS) return null;
    this.searchedMs = tMs;
    const found = found3(picture, angle, { toes: null, colour: start.kind === 'find' ? start.colour : null });
    if (!found.ok) return null;
    const { scale } = picture;
    // Followed from now on, and followed in this very picture, so that one has the same measure as the next.
    const { state, stickers } = stepStickers(startStickers(found.value, ms(tMs - BEFORE_FIRST_MS)), picture, tMs);
    this.following = state;
    this.seenMs = tMs;
    return seenToFull(stickers, false, scale);
  }

  private lookAtSkin(picture: Rgba, tMs: Ms): StickersSeen {
    const tapped = this.skin;
    if (!tapped) throw new Error('observe requires points on skin that were tapped, got none');
    const before = this.seenMs === null ? retimed(tapped, ms(tMs - BEFORE_FIRST_MS)) : tapped;
    const { state, spots } = stepSkinPoints(before, greyOf(picture), tMs);
    this.skin = state;
    this.seenMs = tMs;
    return seenToFull({ ...spots }, false, picture.scale);
  }

  private with<T>(image: Picture, turn: QuarterTurn, look: (picture: Rgba) => T): T {
    try {
      return look(this.reader.read(image, turn, MOST_WIDTH_PX));
    } finally {
      image.close();
    }
  }
}

/** The stickers of a joint in one picture, in its own px. */
function found3(picture: Rgba, angle: JointAngle, { toes, colour }: StickerHint): Result<NamedStickers, StickerRefusal> {
  const found = findStickers(picture, toes, colour === null ? null : chromaNamed(colour));
  if (!found.ok) return found;
  const { tip, knuckle, arch } = found.value;
  return ok<NamedStickers>(angle === 'ankle-dorsiflexion' ? { ...arrangeAnkle([tip, knuckle, arch]) } : { tip, knuckle, arch });
}

/** @param colour `#rrggbb` */
function chromaNamed(colour: string): Chroma {
  const channel = (at: number) => Number.parseInt(colour.slice(at, at + 2), 16);
  return chromaOfColour(channel(1), channel(3), channel(5));
}

const startFrom = (start: StickerStart, { scale }: Rgba, tMs: Ms): StickersState | null =>
  start.kind === 'stickers'
    ? startStickers(
        namedWith(start.named, (s) => stickerFromFull(s, scale)),
        ms(tMs - BEFORE_FIRST_MS),
      )
    : null;

/** Points that were tapped on another clock, as if seen at `tMs`. */
const retimed = (state: SkinState, tMs: Ms): SkinState => ({
  ...state,
  tMs,
  seenMs: { tip: tMs, knuckle: tMs, arch: tMs },
});

/** Integer weights of ITU-R BT.601. */
const luma = (data: Uint8ClampedArray, p: number): number =>
  (77 * (data[p] as number) + 150 * (data[p + 1] as number) + 29 * (data[p + 2] as number)) >> 8;

function greyOf({ width, height, data }: Rgba): Grey {
  const grey = new Uint8Array(width * height);
  for (let i = 0; i < grey.length; i++) grey[i] = luma(data, 4 * i);
  return { width, height, data: grey };
}

function brightnessOf({ data }: Rgba): number {
  let sum = 0;
  let count = 0;
  for (let p = 0; p < data.length; p += 4 * BRIGHTNESS_STEP) {
    sum += luma(data, p);
    count++;
  }
  return count === 0 ? 0 : sum / count;
}
