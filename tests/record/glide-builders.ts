import type { GlideResult, LegHeld } from '../../src/measure/set-result.ts';
import type { GlideCycle, GlidePattern, UnclearReason } from '../../src/reps/glide-coordination.ts';
import { deg, ms, ratio } from '../../src/units.ts';

/** The phase that a cycle of this pattern has. */
const PHASE: Readonly<Record<GlidePattern, number | null>> = { slide: 12, tension: -171, unclear: null };

/** A cycle; the n-th lasts from 2n seconds to a second and a half later, so that it is the n-th repetition of the other builders. */
export const aCycle = (number: number, pattern: GlidePattern, change: Partial<GlideCycle> = {}): GlideCycle => {
  const phase = PHASE[pattern];
  return {
    startMs: ms(number * 2000 - 150),
    endMs: ms(number * 2000 + 1350),
    pattern,
    phaseDeg: phase === null ? null : deg(phase),
    certainty: phase === null ? 0 : 0.998,
    footRangeDeg: deg(31),
    headRangeDeg: deg(26),
    reason: pattern === 'unclear' ? 'head-hidden' : null,
    ...change,
  };
};

/** What a leg was held at, below its marked limit. */
export const aLegHeld = (change: Partial<LegHeld> = {}): LegHeld => ({
  medianDeg: deg(42),
  highestDeg: deg(45.5),
  uncertaintyDeg: deg(3),
  limitDeg: deg(50),
  limitFrom: 'marked',
  ...change,
});

/** S: slide, T: tension, and the reasons of what is unclear. */
const LETTERS: Readonly<Record<string, readonly [GlidePattern, UnclearReason | null]>> = {
  S: ['slide', null],
  T: ['tension', null],
  b: ['unclear', 'between'],
  h: ['unclear', 'head-hidden'],
  f: ['unclear', 'foot-hidden'],
  H: ['unclear', 'head-still'],
  F: ['unclear', 'foot-still'],
};

/** A set of glides from its cycles, a letter each, such as `SSTSSh`. */
export function aGlide(cycles: string, change: Partial<GlideResult> = {}): GlideResult {
  const all = [...cycles].map((letter, i) => {
    const known = LETTERS[letter];
    if (!known) throw new Error(`aGlide requires the letters ${Object.keys(LETTERS).join('')}, got ${letter}`);
    return aCycle(i + 1, known[0], { reason: known[1], ...(letter === 'b' ? { phaseDeg: deg(88), certainty: 0.62 } : {}) });
  });
  const slides = all.filter(({ pattern }) => pattern === 'slide').length;
  const tensions = all.filter(({ pattern }) => pattern === 'tension').length;
  return {
    pattern: slides > 4 * tensions ? 'slide' : tensions > 4 * slides ? 'tension' : 'unclear',
    cycles: all,
    slideShare: all.length === 0 ? null : ratio(slides / all.length),
    footRangeDeg: deg(31),
    headRangeDeg: deg(26),
    headUncertaintyDeg: deg(4),
    legHeld: aLegHeld(),
    stopped: null,
    ...change,
  };
}
