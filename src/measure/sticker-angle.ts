import { ankleDorsiflexion, type Facing, greatToeExtension, type JointAngle } from '../angles/joint-angle.ts';
import type { StickerName } from '../stickers/sticker-name.ts';
import { type Deg, degOfRad, px, radOfDeg } from '../units.ts';
import { lineBetween } from './line-between.ts';
import type { StickerPoint, StickersSeen } from './stickers-seen.ts';

/** The three stickers that make an angle, from the end that moves; the middle one is its corner. */
type Three = readonly [StickerName, StickerName, StickerName];

const TOE: Three = ['tip', 'knuckle', 'arch'];
const ANKLE: Three = ['forefoot', 'ankle', 'shin'];

/** The stickers that an angle is told by. @throws Error for an angle that no stickers tell */
export function stickersOf(angle: JointAngle): Three {
  if (angle === 'great-toe-extension') return TOE;
  if (angle === 'ankle-dorsiflexion') return ANKLE;
  throw new Error(`stickersOf requires an angle that stickers tell, got ${angle}`);
}

/** An angle as one frame's stickers show it. */
export interface StickerAngle {
  /** In the joint's own sense, not yet from rest. */
  readonly deg: Deg;
  /** What the places' own errors make of it, deg^2. */
  readonly variance: number;
  /** Lengths of its two segments, px. */
  readonly lengthsPx: readonly [number, number];
}

/** Which way the toes point; null when the stickers at both ends are not seen. */
export function facingOfStickers({ points }: StickersSeen, angle: JointAngle): Facing | null {
  const [end, middle, far] = stickersOf(angle);
  const from = points[angle === 'great-toe-extension' ? far : middle];
  const to = points[end];
  return from && to ? (to.x < from.x ? 'left' : 'right') : null;
}

/** The angle of a frame; null when one of its stickers is lost, or something else was taken for one. */
export function stickerAngle(seen: StickersSeen | null, angle: JointAngle, facing: Facing): StickerAngle | null {
  if (!seen || seen.implausible) return null;
  const [end, middle, far] = stickersOf(angle).map((name) => seen.points[name]) as (StickerPoint | null | undefined)[];
  if (!end || !middle || !far) return null;
  const moving = lineBetween(middle, end);
  const still = lineBetween(far, middle);
  const value =
    angle === 'great-toe-extension'
      ? greatToeExtension(moving, still, facing)
      : ankleDorsiflexion({ foot: moving, shank: still }, facing);
  const a = Math.max(1, moving.lengthPx);
  const b = Math.max(1, still.lengthPx);
  // A step of the middle one turns both segments: how the two add up depends on the bend between them.
  const bend = radOfDeg(moving.directionDeg) - radOfDeg(still.directionDeg);
  const atMiddle = 1 / a ** 2 + 1 / b ** 2 + (2 * Math.cos(bend)) / (a * b);
  const variance = (end.errorPx / a) ** 2 + (far.errorPx / b) ** 2 + middle.errorPx ** 2 * atMiddle;
  return { deg: value, variance: degOfRad(1) ** 2 * variance, lengthsPx: [a, b] };
}

/** How far another toe points up against the foot's line, deg; null when it carries no sticker or was not seen. */
export function otherToeDeg({ points }: StickersSeen, toe: StickerName, facing: Facing): Deg | null {
  const at = points[toe];
  const { knuckle, arch } = points;
  if (!at || at.bridged || !knuckle || !arch) return null;
  return greatToeExtension(lineBetween(knuckle, at), lineBetween(arch, knuckle), facing);
}

/** Length of the shorter segment under which an angle is too coarse: with places exact to 0.15 px half a degree each. Chosen. */
export const SHORT_SEGMENT_PX = px(20);
