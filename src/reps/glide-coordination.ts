import { cumulativeStdNormalProbability } from 'simple-statistics';
import { type Deg, deg, type Ms, wrapped } from '../units.ts';
import { fundamentalOf, meanPhase, type Phase, phaseBetween } from './cycle-phase.ts';
import { cyclesOf, type GlideSignal, glideSignal, headSpans, type Span, STILL_DEG, spansOf } from './glide-cycles.ts';

/** Both angles in one frame; null where not measured. */
export interface GlideSample {
  readonly tMs: Ms;
  /** Ankle, dorsiflexion, up positive. */
  readonly footDeg: Deg | null;
  /** Head lift (neck flexion), lifted positive. */
  readonly headDeg: Deg | null;
  /** False: the body's points were not looked for in this frame, or not found, so that nothing is known of the head. */
  readonly posed?: boolean;
}

export type GlidePattern = 'slide' | 'tension' | 'unclear';
/**
 * Why a cycle is unclear: one of the two does not move, one was not seen for too long, the body's points came too seldom to tell of the head while the foot was
 * followed, or the head is a quarter of a cycle off.
 */
export type UnclearReason = 'head-still' | 'foot-still' | 'head-hidden' | 'foot-hidden' | 'head-seldom' | 'between';

/** One cycle of a glide. */
export interface GlideCycle {
  readonly startMs: Ms;
  readonly endMs: Ms;
  readonly pattern: GlidePattern;
  /** How far the head's lift comes after the pointing of the foot, deg in [-180, 180); negative: before it. Null where one of them is still or hidden. */
  readonly phaseDeg: Deg | null;
  /** Chance that the phase is on the side of 90 degrees on which it was measured, 0.5 to 1; 0 without a phase. */
  readonly certainty: number;
  /** From the lowest to the highest angle seen in the cycle, smoothed; null where nothing was seen. */
  readonly footRangeDeg: Deg | null;
  readonly headRangeDeg: Deg | null;
  /** Null where the pattern is clear. */
  readonly reason: UnclearReason | null;
}

/** What a set of glides was, cycle by cycle and as a whole. */
export interface GlideCoordination {
  readonly pattern: GlidePattern;
  readonly cycles: readonly GlideCycle[];
}

/** So near to 90 degrees a phase is neither slide nor tension, deg. Chosen: people lag by up to 60, and 15 are left for the measurement. */
const BETWEEN_DEG = 15;
/** A phase is on its side of 90 degrees only when that is at least this sure. Chosen: a usual one-sided 95 %. */
const LEAST_CERTAINTY = 0.95;
/** What the shape of a movement (holds, unlike ways up and down) does to its phase, standard deviation, deg. Chosen; see tests. */
const SHAPE_ERROR_DEG = 4;
/** A swing must exceed its standard error by this factor. Chosen: noise alone does so once in 3,000 cycles (Rayleigh, exp(-16 / 2)). */
const SWING_SIGMAS = 4;
/** Not seen for longer than this share of a cycle: hidden. Chosen: just over a quarter, on both sides of which a turn can hide. */
const HIDDEN_SHARE = 0.3;
/** The set is what its clear cycles are when at least this share of them agrees. Chosen. */
const AGREE_SHARE = 0.8;
/** At least this share of the cycles must have a phase for the set to have a pattern. Chosen. */
const PHASED_SHARE = 0.5;
/**
 * Where the foot was hidden in more of them, so many do when all of those are clear, the same, and together this sure. Chosen: short sets in which somebody stood
 * in front of the foot for two cycles are clear by the third; see tests.
 */
const FEW_PHASED_SHARE = 0.33;
const FEW_CERTAINTY = 0.999;

/**
 * Tells slides from tension in a finished set of nerve glides. Slide: the head lifts while the foot points (plantarflexes), the nerve is let out at one end as
 * it is pulled at the other. Tension: the head lifts while the foot is pulled up. Not causal: it needs the whole set.
 * Holes: bridged for counting up to `holeLimit`; a cycle that is not seen for 0.3 of its length, foot or head, is
 * `foot-hidden` or `head-hidden`; `head-seldom` where the body had no points for as long. A cycle whose foot was not seen is counted by the head, and a movement that an end of the recording cuts is a `foot-hidden` cycle.
 * @param samples one a frame, in order of time
 */
export function glideCoordination(samples: readonly GlideSample[]): GlideCoordination {
  const pointing = glideSignal(samples.map(({ tMs, footDeg }) => ({ tMs, deg: footDeg === null ? null : deg(-footDeg) })));
  const lift = glideSignal(samples.map(({ tMs, headDeg }) => ({ tMs, deg: headDeg })));
  const posedMs = samples.filter(({ posed }) => posed !== false).map(({ tMs }) => tMs);
  const judge = (span: Span) => judged(span, pointing, lift, posedMs);
  const foot = spansOf(pointing, 1);
  const byFoot = foot.filter((span) => !span.cut).map((span) => judge(span).cycle.pattern);
  const slides = byFoot.filter((p) => p === 'slide').length;
  const tensions = byFoot.filter((p) => p === 'tension').length;
  const all = cyclesOf(foot, headSpans(lift, slides === tensions ? null : slides > tensions ? 1 : -1)).map(judge);
  return { pattern: patternOf(all), cycles: all.map(({ cycle }) => cycle) };
}

interface Judged {
  readonly cycle: GlideCycle;
  readonly phase: Phase | null;
}

function judged(span: Span, pointing: GlideSignal, lift: GlideSignal, posedMs: readonly Ms[]): Judged {
  const { startMs, endMs, fromMs, toMs } = span;
  const footRangeDeg = rangeIn(pointing, span);
  const headRangeDeg = rangeIn(lift, span);
  const unclear = (reason: UnclearReason): Judged => ({
    cycle: { startMs, endMs, pattern: 'unclear', phaseDeg: null, certainty: 0, footRangeDeg, headRangeDeg, reason },
    phase: null,
  });
  const footHidden = span.cut || isHidden(pointing, span);
  if (isHidden(lift, span)) return unclear(!footHidden && hasHole(posedMs, span) ? 'head-seldom' : 'head-hidden');
  if (footHidden) return unclear('foot-hidden');
  const foot = fundamentalOf(pointing.raw, fromMs, toMs, pointing.noiseDeg);
  const head = fundamentalOf(lift.raw, fromMs, toMs, lift.noiseDeg);
  if (!foot) return unclear('foot-hidden');
  if (!head) return unclear('head-hidden');
  const moves = (f: typeof foot) => f.swingDeg >= Math.max(STILL_DEG, 2 * SWING_SIGMAS * f.errorDeg);
  if (!moves(foot)) return unclear('foot-still');
  if (!moves(head)) return unclear('head-still');
  const between = inCycle(phaseBetween(foot, head), (toMs - fromMs) / (endMs - startMs));
  const phase = { deg: between.deg, errorDeg: deg(Math.hypot(between.errorDeg, SHAPE_ERROR_DEG)) };
  const pattern = sideOf(phase);
  const reason: UnclearReason | null = pattern === 'unclear' ? 'between' : null;
  const cycle = {
    startMs,
    endMs,
    pattern,
    phaseDeg: phase.deg,
    certainty: certaintyOf(phase),
    footRangeDeg,
    headRangeDeg,
    reason,
  };
  return { cycle, phase };
}

/**
 * A phase measured over the cycle and the rest around it, as one of the cycle alone: the same lateness is a larger part of the shorter time. Lateness
 * counts from together (0) or opposite (180), whichever is nearer, and never beyond 90.
 * @param longer length of the time measured over, in cycles
 */
function inCycle(phase: Phase, longer: number): Phase {
  const opposite = Math.abs(phase.deg) > 90;
  const late = opposite ? wrapped(phase.deg - 180) : phase.deg;
  const scaled = Math.max(-90, Math.min(90, late * longer));
  return { deg: deg(wrapped(opposite ? scaled + 180 : scaled)), errorDeg: deg(phase.errorDeg * longer) };
}

const certaintyOf = (phase: Phase): number => cumulativeStdNormalProbability(Math.abs(90 - Math.abs(phase.deg)) / phase.errorDeg);

function sideOf(phase: Phase): GlidePattern {
  const size = Math.abs(phase.deg);
  if (Math.abs(90 - size) < BETWEEN_DEG || certaintyOf(phase) < LEAST_CERTAINTY) return 'unclear';
  return size < 90 ? 'slide' : 'tension';
}

/** The pattern of the mean phase, unless too many cycles have none or are clearly otherwise. */
function patternOf(all: readonly Judged[]): GlidePattern {
  const phases = all.flatMap(({ phase }) => (phase ? [phase] : []));
  const mean = meanPhase(phases);
  if (!mean) return 'unclear';
  const whole = { deg: mean.deg, errorDeg: deg(Math.hypot(mean.errorDeg, SHAPE_ERROR_DEG)) };
  const pattern = sideOf(whole);
  const clear = all.filter(({ cycle }) => cycle.pattern !== 'unclear');
  const agree = clear.filter(({ cycle }) => cycle.pattern === pattern);
  if (phases.length >= PHASED_SHARE * all.length) return agree.length >= AGREE_SHARE * clear.length ? pattern : 'unclear';
  const fewDo = phases.length >= FEW_PHASED_SHARE * all.length && certaintyOf(whole) >= FEW_CERTAINTY;
  return fewDo && agree.length === phases.length && onlyHidden(all) ? pattern : 'unclear';
}

/** Whether those without a phase were not seen: a foot or head that does not move says that it is no glide. */
const onlyHidden = (all: readonly Judged[]): boolean =>
  all.every(({ cycle, phase }) => phase !== null || cycle.reason === 'foot-hidden' || cycle.reason === 'head-hidden');

function rangeIn({ smooth }: GlideSignal, { startMs, endMs }: Span): Deg | null {
  let low = Number.POSITIVE_INFINITY;
  let high = Number.NEGATIVE_INFINITY;
  for (const { tMs, deg: x } of smooth) {
    if (x === null || tMs < startMs || tMs > endMs) continue;
    low = Math.min(low, x);
    high = Math.max(high, x);
  }
  return high < low ? null : deg(high - low);
}

const isHidden = ({ raw }: GlideSignal, span: Span): boolean =>
  hasHole(
    raw.flatMap(({ tMs, deg: x }) => (x === null ? [] : [tMs])),
    span,
  );

/** Whether none of these moments lies in a part of the cycle that is too long. */
function hasHole(momentsMs: readonly Ms[], { startMs, endMs }: Span): boolean {
  let seenMs: number = startMs;
  let longest = 0;
  for (const tMs of momentsMs) {
    if (tMs < startMs || tMs > endMs) continue;
    longest = Math.max(longest, tMs - seenMs);
    seenMs = tMs;
  }
  return Math.max(longest, endMs - seenMs) > HIDDEN_SHARE * (endMs - startMs);
}
