import type { AngleSample, Movement } from '../../src/reps/movement.ts';
import type { RepRule } from '../../src/reps/rep-rule.ts';
import { deg, ms, ratio } from '../../src/units.ts';

/** A rule for tests: like foot taps, in round numbers. */
export const RULE: RepRule = {
  direction: 'rises',
  noticeDeg: deg(2),
  leastDeg: deg(3),
  completeShare: ratio(0.5),
  leastMs: ms(120),
  readyMs: ms(600),
  stillDeg: deg(4),
};

/** A stretch of a movement: to an angle, in a time, as a raised cosine. */
export interface Stretch {
  readonly to: number;
  readonly lastsMs: number;
}

export const rest = (lastsMs: number, at = 0): Stretch => ({ to: at, lastsMs });
/** There and back to 0. */
export const rep = (range: number, lastsMs = 800, holdMs = 0): readonly Stretch[] => [
  { to: range, lastsMs: lastsMs / 2 },
  ...(holdMs > 0 ? [rest(holdMs, range)] : []),
  { to: 0, lastsMs: lastsMs / 2 },
];

/** The samples of stretches one after the other, from 0. */
export function samplesOf(stretches: readonly Stretch[], fps = 30): readonly AngleSample[] {
  const samples: AngleSample[] = [];
  const total = stretches.reduce((sum, s) => sum + s.lastsMs, 0);
  let at = 0;
  let fromMs = 0;
  let from = 0;
  for (let i = 0; (i * 1000) / fps < total; i++) {
    const tMs = (i * 1000) / fps;
    let stretch = stretches[at] as Stretch;
    while (tMs >= fromMs + stretch.lastsMs && at < stretches.length - 1) {
      fromMs += stretch.lastsMs;
      from = stretch.to;
      at++;
      stretch = stretches[at] as Stretch;
    }
    const share = (1 - Math.cos((Math.PI * (tMs - fromMs)) / stretch.lastsMs)) / 2;
    samples.push({ tMs: ms(tMs), deg: deg(from + (stretch.to - from) * share) });
  }
  return samples;
}

/** The same without what lies between two times: null there, or no samples at all. */
export const withoutSeen = (samples: readonly AngleSample[], fromMs: number, toMs: number): readonly AngleSample[] =>
  samples.map((s) => (s.tMs >= fromMs && s.tMs < toMs ? { ...s, deg: null } : s));
export const withoutFrames = (samples: readonly AngleSample[], fromMs: number, toMs: number): readonly AngleSample[] =>
  samples.filter((s) => s.tMs < fromMs || s.tMs >= toMs);

export const completeOf = (found: readonly Movement[]): number => found.filter((m) => m.complete).length;
