import type { JointAngle } from '../../angles/joint-angle.ts';
import type { Observation } from '../../measure/observation.ts';
import { stickerAdvice } from '../../measure/sticker-advice.ts';
import { facingOfStickers, stickerAngle } from '../../measure/sticker-angle.ts';
import type { RepRule } from '../../reps/rep-rule.ts';
import type { Ms } from '../../units.ts';
import type { CheckState, StickerCheck } from '../words/sticker-words.ts';

/** The angles of the last moments; see `RepRule` for how still is still. */
export interface Stillness {
  readonly rule: Pick<RepRule, 'readyMs' | 'stillDeg'>;
  readonly angles: readonly { readonly tMs: Ms; readonly deg: number }[];
}

export const startStillness = (rule: Stillness['rule']): Stillness => ({ rule, angles: [] });

/** Before anything is seen. */
export const NOTHING_KNOWN: Readonly<Record<StickerCheck, CheckState>> = {
  seen: 'unknown',
  large: 'unknown',
  light: 'unknown',
  glare: 'unknown',
  still: 'unknown',
};

/**
 * How well stickers are seen in the next frame, by the set's own measure.
 * @returns all but the glints, which take a look at colours
 */
export function stepChecks(
  { rule, angles: before }: Stillness,
  observation: Observation,
  angle: JointAngle,
): readonly [Stillness, Omit<Readonly<Record<StickerCheck, CheckState>>, 'glare'>] {
  const { tMs, stickers = null } = observation;
  const facing = stickers && facingOfStickers(stickers, angle);
  const shown = facing && stickerAngle(stickers, angle, facing);
  const advice = stickerAdvice(observation, angle, shown || null);
  const all = !advice.includes('stickers-missing');
  const angles = shown ? [...before.filter((a) => tMs - a.tMs <= rule.readyMs), { tMs, deg: shown.deg as number }] : [];
  const degrees = angles.map((a) => a.deg);
  const long = tMs - (angles[0]?.tMs ?? tMs) >= rule.readyMs / 2;
  const still = Math.max(...degrees) - Math.min(...degrees) <= rule.stillDeg;
  return [
    { rule, angles },
    {
      seen: all ? 'good' : 'bad',
      large: all ? (advice.includes('stickers-small') ? 'bad' : 'good') : 'unknown',
      light: advice.includes('too-dark') ? 'bad' : 'good',
      still: long ? (still ? 'good' : 'bad') : 'unknown',
    },
  ];
}
