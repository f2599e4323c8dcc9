import type { Facing } from '../angles/joint-angle.ts';
import { type GlideCycle, glideCoordination } from '../reps/glide-coordination.ts';
import { median } from '../signal/median.ts';
import { type Deg, deg, type Ms, ms, ratio } from '../units.ts';
import type { AngleInFrame } from './angle-series.ts';
import { ELEVATION_UNCERTAINTY_DEG, UNLEVELLED_UNCERTAINTY_DEG } from './glide-limit.ts';
import { headSeries } from './head-series.ts';
import { elevationSeries } from './held-leg.ts';
import type { LegSample } from './leg-sample.ts';
import type { GlideResult, GlideStop, LegHeld } from './set-result.ts';
import { headUncertainty } from './uncertainty.ts';

/** The leg's elevation at the start is the median over this time about when counting began, ms. Chosen: people hold still for longer. */
const AT_START_MS = 700;

/** What a set of glides is made from. */
export interface GlideEvidence {
  readonly samples: readonly LegSample[];
  /** The foot's angle and the leg, one a sample; null where it was not measured. */
  readonly frames: readonly (AngleInFrame | null)[];
  /** Index of the first sample that counts; null: none does. */
  readonly from: number | null;
  readonly facing: Facing;
  /** As marked; null: where the leg was held when the set began. */
  readonly markedLimitDeg: Deg | null;
  readonly stopped: GlideStop | null;
}

/** What foot and head did together in a finished set, and how high the leg was held. */
export function glideResult({ samples, frames, from, facing, ...held }: GlideEvidence): GlideResult {
  const counted = samples.slice(from ?? samples.length);
  const head = headSeries(counted, facing);
  const both = counted.map(({ tMs, points }, i) => ({
    tMs,
    footDeg: frames[(from ?? 0) + i]?.deg ?? null,
    headDeg: head[i] ?? null,
    posed: points !== null,
  }));
  const { pattern, cycles } = glideCoordination(both);
  const slides = cycles.filter((cycle) => cycle.pattern === 'slide').length;
  const headRangeDeg = middleOf(cycles, (cycle) => cycle.headRangeDeg);
  return {
    pattern,
    cycles,
    slideShare: cycles.length > 0 ? ratio(slides / cycles.length) : null,
    footRangeDeg: middleOf(cycles, (cycle) => cycle.footRangeDeg),
    headRangeDeg,
    headUncertaintyDeg: headRangeDeg === null ? null : headUncertainty(headRangeDeg),
    legHeld: from === null ? null : legHeld({ samples, frames, from, facing, ...held }, from),
    stopped: held.stopped,
  };
}

function middleOf(cycles: readonly GlideCycle[], pick: (cycle: GlideCycle) => Deg | null): Deg | null {
  const middle = median(cycles.flatMap((cycle) => pick(cycle) ?? []));
  return middle === null ? null : deg(middle);
}

function legHeld({ samples, frames, facing, markedLimitDeg }: GlideEvidence, from: number): LegHeld | null {
  const { elevationDeg, levelled } = elevationSeries(samples, frames, facing);
  const beganMs = (samples[from] as LegSample).tMs;
  const within = (fromMs: Ms, toMs: Ms): readonly number[] =>
    elevationDeg.flatMap((each, i) => {
      const { tMs } = samples[i] as LegSample;
      return each === null || tMs < fromMs || tMs > toMs ? [] : [each];
    });
  const during = within(beganMs, ms(Number.POSITIVE_INFINITY));
  const medianDeg = median(during);
  if (medianDeg === null) return null;
  const startDeg = median(within(ms(beganMs - AT_START_MS), ms(beganMs + AT_START_MS))) ?? medianDeg;
  return {
    medianDeg: deg(medianDeg),
    highestDeg: deg(during.reduce((highest, each) => Math.max(highest, each))),
    uncertaintyDeg: levelled ? ELEVATION_UNCERTAINTY_DEG : UNLEVELLED_UNCERTAINTY_DEG,
    limitDeg: markedLimitDeg ?? deg(startDeg),
    limitFrom: markedLimitDeg === null ? 'held' : 'marked',
  };
}
