import type { StoreApi } from 'zustand/vanilla';
import type { JointAngle } from '../../angles/joint-angle.ts';
import type { PictureSize } from '../../capture/frame.ts';
import type { StickersSeen } from '../../measure/stickers-seen.ts';
import type { StickerStart } from '../../run/sticker-start.ts';
import type { StickerRefusal } from '../../stickers/refusal.ts';
import type { Spot } from '../../stickers/rgba-picture.ts';
import type { SkinRefusal } from '../../stickers/skin-points.ts';
import type { StickerName } from '../../stickers/sticker-name.ts';
import type { UnseenReason } from '../../stickers/unseen-reason.ts';
import type { Ms } from '../../units.ts';
import type { Problem, SetPlan } from '../services.ts';
import type { CheckState, StickerCheck } from '../words/sticker-words.ts';

/** How the stickers are come by: found by themselves, tapped, or points on the skin instead. */
export type SetUpMode = 'find' | 'tap' | 'skin';

export type Checks = Readonly<Record<StickerCheck, CheckState>>;

export interface SetUpState {
  readonly mode: SetUpMode;
  readonly size: PictureSize | null;
  /** How long the film is; null: the picture is live. */
  readonly durationMs: Ms | null;
  /** Which of the film's pictures is shown. */
  readonly shownMs: Ms;
  /** Those that were tapped so far. */
  readonly tapped: Readonly<Partial<Record<StickerName, Spot>>>;
  /** All three are known: what the set begins with. */
  readonly start: StickerStart | null;
  readonly refusal: (StickerRefusal | SkinRefusal)['kind'] | null;
  readonly checks: Checks;
  /** Why not all of those that are followed are measured now; null: they are, or nobody knows. */
  readonly unseen: UnseenReason | null;
  readonly problem: Problem | null;
}

export interface SetUp {
  readonly angle: JointAngle;
  /** Names from one end of the foot to the other: the order of tapping. */
  readonly names: readonly StickerName[];
  readonly state: StoreApi<SetUpState>;
  /** What is seen of the stickers now; changes with every frame. */
  readonly seen: StoreApi<{ readonly stickers: StickersSeen | null }>;
  readonly choose: (mode: SetUpMode) => void;
  /** @param at px of the upright picture */
  readonly tap: (at: Spot) => Promise<void>;
  /** Of a film: another of its pictures, at which measuring then begins. */
  readonly showAt: (tMs: Ms) => void;
  /** The plan with the stickers where they are now; null before they are known. */
  readonly ready: () => SetPlan | null;
  /** Lets the camera go. */
  readonly stop: () => void;
}
