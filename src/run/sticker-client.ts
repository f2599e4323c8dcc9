import { type Remote, releaseProxy, transfer, wrap } from 'comlink';
import type { JointAngle } from '../angles/joint-angle.ts';
import type { Frame, QuarterTurn } from '../capture/frame.ts';
import type { ReadablePicture } from '../capture/rgba.ts';
import type { Observation } from '../measure/observation.ts';
import { fail, ok, type Result } from '../result.ts';
import type { ToeOrder } from '../stickers/arrange.ts';
import type { StickerRefusal } from '../stickers/refusal.ts';
import type { Spot } from '../stickers/rgba-picture.ts';
import type { SkinRefusal } from '../stickers/skin-points.ts';
import type { Sticker } from '../stickers/sticker-at.ts';
import type { FrameObserver } from './session.ts';
import type { StickerHint, StickerService } from './sticker-service.ts';
import type { NamedStickers, StickerStart, StickerTask } from './sticker-start.ts';

/** A picture that is taken over and closed in the worker. */
export interface StickerPicture {
  readonly image: ReadablePicture;
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

/** Starts the worker. */
export function startStickerClient(): Result<StickerClient, { readonly kind: 'no-worker' }> {
  if (typeof Worker === 'undefined') return fail({ kind: 'no-worker' });
  const worker = new Worker(new URL('./sticker-worker.ts', import.meta.url), { type: 'module' });
  const service: Remote<StickerService> = wrap<StickerService>(worker);
  return ok({
    find: ({ image, turn }, angle, hint) => service.find(transfer(image, [image]), turn, angle, hint),
    learn: ({ image, turn }, tap) => service.learn(transfer(image, [image]), turn, tap),
    tapSkin: ({ image, turn }, spots) => service.tapSkin(transfer(image, [image]), turn, spots),
    begin: (task) => service.begin(task),
    observe: ({ image, turn, tMs }) => service.observe(transfer(image, [image]), turn, tMs),
    close() {
      service[releaseProxy]();
      worker.terminate();
    },
  });
}

/** The client as a session uses it. Pictures in between, of which the brightness alone is left, show no stickers. */
export const stickerObserver = (
  { begin, observe }: Pick<StickerClient, 'begin' | 'observe'>,
  start: StickerStart,
): FrameObserver => ({
  begin: ({ exercise }) => begin({ angle: exercise.angle, start }),
  follow: async () => [],
  observe,
});
