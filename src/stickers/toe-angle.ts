import { fail, ok, type Result } from '../result.ts';
import { type Deg, deg, unwrappedNear, wrapped } from '../units.ts';
import type { StickersStep } from './follow.ts';
import type { FollowTrouble } from './follow-trouble.ts';
import {
  type AngleWithError,
  type Bend,
  bendAt,
  fromRest,
  type MeasuredSpot,
  type RestBend,
  type Toes,
  toesPoint,
  Z95,
} from './line-angle.ts';
import { TOE_STICKERS, type ToeSticker } from './sticker-name.ts';

/** Why a frame gives no angle. */
export type NoToeAngle = FollowTrouble;

/**
 * The bend of the line arch - knuckle - tip in one frame; a sticker that is lost, or distances that cannot be, give none.
 */
export function toeBend({
  stickers,
  troubles,
}: Pick<StickersStep, 'stickers' | 'troubles'>): Result<Bend & { readonly toes: Toes }, NoToeAngle> {
  const trouble = troubles.find((t) => (t.kind === 'lost' ? isToe(t.name) : t.between.some(isToe)));
  if (trouble) return fail(trouble);
  const { tip, knuckle, arch } = stickers;
  if (!tip) return fail({ kind: 'lost', name: 'tip' });
  if (!knuckle) return fail({ kind: 'lost', name: 'knuckle' });
  if (!arch) return fail({ kind: 'lost', name: 'arch' });
  return ok({ ...bendAt(arch, knuckle, tip), toes: toesPoint(arch.at, tip.at) });
}

const isToe = (name: string): name is ToeSticker => (TOE_STICKERS as readonly string[]).includes(name);

/** Great-toe extension in the picture: how far the toe has gone up from its resting line, up positive. */
export const toeExtension = (now: Bend, rest: RestBend, toes: Toes): AngleWithError => fromRest(now, rest, toes);

/**
 * Ankle dorsiflexion from three stickers on shin, ankle and forefoot: 0 with the line ankle - forefoot square to the line shin - ankle, up positive.
 * More precise than joints found by a model; where the stickers sit sets its zero, hence look at the range.
 */
export function stickerAnkle(shin: MeasuredSpot, ankle: MeasuredSpot, forefoot: MeasuredSpot, toes: Toes): AngleWithError {
  const { bendDeg, seDeg } = bendAt(shin, ankle, forefoot);
  const up = toes === 'left' ? bendDeg : -bendDeg;
  return { angleDeg: deg(wrapped(up - 90)), errorDeg: deg(Z95 * seDeg) };
}

/** An angle without the jump at 180 degrees: the one nearest to the last. @param last null for the first */
export const unwrappedAngle = (angleDeg: Deg, last: Deg | null): Deg =>
  last === null ? angleDeg : deg(unwrappedNear(angleDeg, last));
