import { transfer } from 'comlink';
import type { JointAngle } from '../angles/joint-angle.ts';
import type { Frame, Picture, QuarterTurn } from '../capture/frame.ts';
import type { Observation } from '../measure/observation.ts';
import { asRecorded } from '../record/sticker-frame.ts';
import type { Result } from '../result.ts';
import type { ToeOrder } from '../stickers/arrange.ts';
import type { StickerRefusal } from '../stickers/refusal.ts';
import type { Spot } from '../stickers/rgba-picture.ts';
import type { SkinRefusal } from '../stickers/skin-points.ts';
import type { Sticker } from '../stickers/sticker-at.ts';
import { hostedService } from './hosted-service.ts';
import type { FrameObserver } from './session.ts';
import type { StickerHint, StickerService } from './sticker-service.ts';
import type { NamedStickers, StickerStart, StickerTask } from './sticker-start.ts';

/** A picture that is taken over and closed in the worker. */
export interface StickerPicture {
  readonly image: Picture;
  /** Clockwise, sets it upright; 0 for a bitmap. */
  readonly turn: QuarterTurn;
}

/** The page's handle on the sticker worker. It needs no model. All places are px of the upright picture. One call at a time. */
export interface StickerClient {
  /** The stickers of a joint, found by themselves: for set-up. */
  readonly find: (
    picture: StickerPicture,
    angle: JointAngle,
    hint: StickerHint,
  ) => Promise<Result<NamedStickers, StickerRefusal>>;
  /** The sticker that was tapped on. */
  readonly learn: (picture: StickerPicture, tap: Spot) => Promise<Result<Sticker, StickerRefusal>>;
  /** Takes note of points on bare skin, tapped while the toe rests; then begin with `{ kind: 'skin' }`. */
  readonly tapSkin: (picture: StickerPicture, spots: ToeOrder<Spot>) => Promise<Result<null, SkinRefusal>>;
  /** Starts to follow: a set, or a look at the stickers before it. */
  readonly begin: (task: StickerTask) => Promise<void>;
  /** Takes over `frame.image`. Times on one clock, later each time. */
  readonly observe: (frame: Frame) => Promise<Observation>;
  readonly close: () => void;
}

/** Starts the worker, or takes the page's own thread where there is none. */
export function startStickerClient(): StickerClient {
  const hosted = hostedService<StickerService>(
    () => new Worker(new URL('./sticker-worker.ts', import.meta.url), { type: 'module' }),
    async () => new (await import('./sticker-service.ts')).StickerService(),
  );
  const served = async () => (await hosted).service;
  return {
    find: async ({ image, turn }, angle, hint) => (await served()).find(transfer(image, [image]), turn, angle, hint),
    learn: async ({ image, turn }, tap) => (await served()).learn(transfer(image, [image]), turn, tap),
    tapSkin: async ({ image, turn }, spots) => (await served()).tapSkin(transfer(image, [image]), turn, spots),
    begin: async (task) => (await served()).begin(task),
    observe: async ({ image, turn, tMs }) => (await served()).observe(transfer(image, [image]), turn, tMs),
    close: () => void hosted.then(({ end }) => end()),
  };
}

/** The client as a session uses it: what it sees is what a recording of it keeps. Pictures in between, of which the brightness alone is left, show no stickers. */
export const stickerObserver = (
  { begin, observe }: Pick<StickerClient, 'begin' | 'observe'>,
  start: StickerStart,
): FrameObserver => ({
  begin: ({ exercise }) => begin({ angle: exercise.angle, start }),
  follow: async () => [],
  observe: async (frame) => asRecorded(await observe(frame)),
});
