import type { Facing, JointAngle } from '../angles/joint-angle.ts';
import { bendAt, type MeasuredSpot } from '../stickers/line-angle.ts';
import { distance } from '../stickers/rgba-picture.ts';
import type { StickerName } from '../stickers/sticker-name.ts';
import { type Deg, deg, px, wrapped } from '../units.ts';
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

/** Turning clockwise raises what points to the left and lowers what points to the right. */
const upward = (bendDeg: Deg, facing: Facing): number => (facing === 'left' ? bendDeg : -bendDeg);

const spot = (point: StickerPoint): MeasuredSpot => ({ at: point, errorPx: point.errorPx });

/**
 * The angle of a frame, up positive: the toe's is 0 with the line through its stickers straight, the ankle's with the line to the forefoot square to the shin's.
 * @returns null when one of its stickers is lost, or something else was taken for one
 */
export function stickerAngle(seen: StickersSeen | null, angle: JointAngle, facing: Facing): StickerAngle | null {
  if (!seen || seen.implausible) return null;
  const [end, middle, far] = stickersOf(angle).map((name) => seen.points[name]) as (StickerPoint | null | undefined)[];
  if (!end || !middle || !far) return null;
  const { bendDeg, seDeg } = bendAt(spot(far), spot(middle), spot(end));
  const square = angle === 'ankle-dorsiflexion' ? 90 : 0;
  return {
    deg: deg(wrapped(upward(bendDeg, facing) - square)),
    variance: seDeg ** 2,
    lengthsPx: [distance(middle, end), distance(far, middle)],
  };
}

/** How far another toe points up against the foot's line, deg; null when it carries no sticker or was not seen. */
export function otherToeDeg({ points }: StickersSeen, toe: StickerName, facing: Facing): Deg | null {
  const at = points[toe];
  const { knuckle, arch } = points;
  if (!at || at.bridged || !knuckle || !arch) return null;
  return deg(upward(bendAt(spot(arch), spot(knuckle), spot(at)).bendDeg, facing));
}

/** Length of the shorter segment under which an angle is too coarse: with places exact to 0.15 px half a degree each. Chosen. */
export const SHORT_SEGMENT_PX = px(20);
