import { type Ms, ms, type Ratio, ratio } from '../units.ts';

/** How a repetition is paced: half of `tempoS` out, held for `holdS`, half of `tempoS` back. */
export interface Pace {
  readonly tempoS: number;
  /** 0: not held. */
  readonly holdS: number;
}

export type Beat = 'out' | 'hold' | 'back';

/** Where a paced set stands. */
export interface PaceMoment {
  /** The repetition under way, from 1 on. */
  readonly rep: number;
  readonly beat: Beat;
  /** How much of the beat is over, 0 to 1. */
  readonly share: Ratio;
}

/** How long one repetition takes, ms. */
export const repMs = ({ tempoS, holdS }: Pace): Ms => ms((tempoS + holdS) * 1000);

/** @param elapsedMs since the first repetition began, not negative */
export function paceAt(elapsedMs: Ms, pace: Pace): PaceMoment {
  const wholeMs = repMs(pace);
  const halfMs = pace.tempoS * 500;
  const holdMs = pace.holdS * 1000;
  const inRepMs = elapsedMs % wholeMs;
  const rep = Math.floor(elapsedMs / wholeMs) + 1;
  if (inRepMs < halfMs) return { rep, beat: 'out', share: ratio(inRepMs / halfMs) };
  if (inRepMs < halfMs + holdMs) return { rep, beat: 'hold', share: ratio((inRepMs - halfMs) / holdMs) };
  return { rep, beat: 'back', share: ratio((inRepMs - halfMs - holdMs) / halfMs) };
}

/** How far out the movement should be, 0 to 1: soft at both ends, as a limb moves. */
export function outAt({ beat, share }: Pick<PaceMoment, 'beat' | 'share'>): Ratio {
  if (beat === 'hold') return ratio(1);
  const way = (1 - Math.cos(Math.PI * share)) / 2;
  return ratio(beat === 'out' ? way : 1 - way);
}
