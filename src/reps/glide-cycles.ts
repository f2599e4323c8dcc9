import { holeLimit } from '../signal/hole-limit.ts';
import { noiseLevel } from '../signal/noise-level.ts';
import { smoothZeroLag } from '../signal/zero-lag.ts';
import { deg, type Ms, ms, ratio } from '../units.ts';
import { usualRange } from './complete-threshold.ts';
import type { AngleSample } from './movement.ts';
import type { RepRule } from './rep-rule.ts';
import { segmentSet } from './segment-set.ts';

/** One of the two angles over a set: as measured, smoothed, and its noise. */
export interface GlideSignal {
  readonly raw: readonly AngleSample[];
  readonly smooth: readonly AngleSample[];
  readonly noiseDeg: number;
}

/** One movement there and back. */
export interface Span {
  readonly startMs: Ms;
  readonly endMs: Ms;
  /** From when to when it can be told how the other joint moves: with the rest around it, as far as that belongs to this movement. */
  readonly fromMs: Ms;
  readonly toMs: Ms;
  /** Whether a hole or an end of the set cut it. */
  readonly cut: boolean;
}

/** A swing below this is no glide, deg. Chosen: glides are done over 20 to 40. */
export const STILL_DEG = 6;
/** Standard deviations of the raw noise that a movement must exceed to be noticed; smoothing leaves less than half of it. Chosen; see tests. */
const NOTICE_SIGMAS = 2.5;
/** A glide takes at least this long there and back. Chosen. */
const LEAST_MS = ms(600);
/** How the joints move, see `Mobility`: thirty degrees there and back in two seconds. Chosen. */
const ACCELERATION = 3e3;
/** Noise is never taken for smaller than this, deg. Chosen. */
const LEAST_NOISE_DEG = 0.3;
/** Movements below this share of the usual range are not glides. Chosen. */
const COMPLETE_SHARE = 0.4;
/**
 * This share of a movement before and after it is looked at as well, or half of the rest where that is less. Chosen: a movement that comes a quarter
 * of a cycle late is still whole in there.
 */
const REST_SHARE = 0.25;
/** What `segmentSet` leaves off at each end of a cosine whose last tenth is cut, as a share of what it keeps. */
const FOOT_OF_COSINE = (() => {
  const off = Math.acos(1 - 2 * 0.1) / (2 * Math.PI);
  return off / (1 - 2 * off);
})();

/** @param raw one a frame, positive in the direction that is to be followed */
export function glideSignal(raw: readonly AngleSample[]): GlideSignal {
  const noiseDeg = Math.max(LEAST_NOISE_DEG, noiseLevel(raw.map((s) => s.deg)));
  const bridgeMs = holeLimit(
    raw.map((s) => s.tMs),
    LEAST_MS,
  );
  const smooth = smoothZeroLag(
    raw.map(({ tMs, deg: value }) => ({ tMs, value, variance: noiseDeg ** 2 })),
    { acceleration: ACCELERATION, bridgeMs },
  );
  return { raw, noiseDeg, smooth: raw.map(({ tMs }, i) => ({ tMs, deg: smooth[i] == null ? null : deg(smooth[i]) })) };
}

/** The movements up and back of a signal, or with `sense` -1 down and back, from where they leave the rest to where they are back. */
export function spansOf({ smooth, noiseDeg }: GlideSignal, sense: 1 | -1): readonly Span[] {
  const rule: RepRule = {
    direction: 'rises',
    noticeDeg: deg(Math.max(STILL_DEG, NOTICE_SIGMAS * noiseDeg)),
    leastDeg: deg(STILL_DEG),
    completeShare: ratio(COMPLETE_SHARE),
    leastMs: LEAST_MS,
    readyMs: ms(0),
    stillDeg: deg(STILL_DEG),
  };
  const found = segmentSet(
    sense === 1 ? smooth : smooth.map(({ tMs, deg: x }) => ({ tMs, deg: x === null ? null : deg(-x) })),
    rule,
  );
  const least = COMPLETE_SHARE * (usualRange(found.map((m) => m.rangeDeg)) ?? 0);
  const kept = found.filter((m) => m.complete || (m.cut && m.rangeDeg >= least));
  const first = smooth[0]?.tMs ?? 0;
  const last = smooth.at(-1)?.tMs ?? 0;
  return kept.map((m, i) => {
    const before = kept[i - 1]?.endMs;
    const after = kept[i + 1]?.startMs;
    const earliest = before === undefined ? first : (before + m.startMs) / 2;
    const latest = after === undefined ? last : (after + m.endMs) / 2;
    const foot = FOOT_OF_COSINE * (m.endMs - m.startMs);
    const startMs = ms(Math.max(m.startMs - foot, earliest));
    const endMs = ms(Math.min(m.endMs + foot, latest));
    const rest = REST_SHARE * (endMs - startMs);
    const fromMs = ms(Math.max(startMs - rest, earliest));
    const toMs = ms(Math.min(endMs + rest, latest));
    return { startMs, endMs, fromMs, toMs, cut: m.cut && !m.complete };
  });
}

/** The movements of the head as it goes with the foot: there and back in the sense in which there are more of them when `sense` is null. */
export function headSpans(lift: GlideSignal, sense: 1 | -1 | null): readonly Span[] {
  if (sense !== null) return spansOf(lift, sense);
  const up = spansOf(lift, 1);
  const down = spansOf(lift, -1);
  const whole = (spans: readonly Span[]) => spans.filter((span) => !span.cut).length;
  return whole(down) > whole(up) ? down : up;
}

/** Whether two spans are the same cycle: half of the shorter lies in the other. */
export const sameCycle = (a: Span, b: Span): boolean =>
  Math.min(a.endMs, b.endMs) - Math.max(a.startMs, b.startMs) >= Math.min(a.endMs - a.startMs, b.endMs - b.startMs) / 2;

/**
 * The cycles of a set, each once: the foot's, and where the foot shows none (it is hidden or does not move) the head's.
 * @param head movements of the head in the sense in which it goes with the foot
 */
export function cyclesOf(foot: readonly Span[], head: readonly Span[]): readonly Span[] {
  const whole = foot.filter((span) => !span.cut);
  const byHead = head.filter((span) => !span.cut && !whole.some((other) => sameCycle(span, other)));
  const known = [...whole, ...byHead];
  const pieces = foot.filter((span) => span.cut && !known.some((other) => sameCycle(span, other)));
  return [...known, ...pieces].sort((a, b) => a.startMs - b.startMs);
}
