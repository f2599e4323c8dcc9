import { type GlideCycle, type GlideSample, glideCoordination } from '../reps/glide-coordination.ts';
import { type GlideFeedback, heedCycle, NO_FEEDBACK } from '../reps/glide-feedback.ts';
import { median } from '../signal/median.ts';
import { type Deg, deg, type Ms } from '../units.ts';
import type { SetSpec } from './finish.ts';
import { firstAtLeast } from './first-at-least.ts';
import { ABOVE_MS, type HeldLimit, isAbove } from './glide-limit.ts';
import { faceLine, headRest, liftOf } from './head-series.ts';
import { aboveShank, elevationInPicture, levelSeen, usualLevel } from './held-leg.ts';
import type { LegSample } from './leg-sample.ts';
import type { LiveLeg } from './live-leg.ts';
import type { LiveGlide, SetEvent } from './live-view.ts';

/** What is remembered of one frame. */
interface Moment extends GlideSample {
  /** Lift from no zero of its own. */
  readonly headDeg: Deg | null;
  readonly aboveShankDeg: Deg | null;
  readonly levelDeg: Deg | null;
  readonly elevationDeg: Deg | null;
  /** Whether this frame had a pose. */
  readonly posed: boolean;
}

/** A nerve glide under way: the latest frames, and what was told of them. */
export interface LiveGlideState {
  /** In order of time, at most the last `REMEMBERED_MS`. */
  readonly recent: readonly Moment[];
  readonly elevationDeg: Deg | null;
  readonly limit: HeldLimit | null;
  /** Since when the leg has been above it; null: it is not. */
  readonly aboveSinceMs: Ms | null;
  /** When cycles were last looked for. */
  readonly lookedMs: Ms | null;
  /** The newest cycle that was told. */
  readonly newest: GlideCycle | null;
  readonly feedback: GlideFeedback;
}

/** Cycles are found in this much of the set, so that a long one gets no slower. Chosen: two of the slowest cycles and some more. */
const REMEMBERED_MS = 25_000;
/** And in this many frames at most, the latest ones. Chosen: 25 s of 30 a second. */
const MOST_MOMENTS = 750;
/** Cycles are looked for every so often, ms. Chosen: a word comes no later than that. */
const LOOK_MS = 400;
/** A cycle is told when this share of its length has gone by after it: so much of the rest is looked at (`reps/glide-cycles.ts`). */
const SETTLED_SHARE = 0.25;
const SETTLED_MS = 150;
/** The head now is the middle of this time, ms: its points jitter. */
const NOW_MS = 200;
/** Where the leg is held when the set begins is the median over this time before, ms. Chosen: as long as it has been still. */
const AT_START_MS = 600;

export const startLiveGlide = ({ elevationLimitDeg }: Pick<SetSpec, 'elevationLimitDeg'>): LiveGlideState => ({
  recent: [],
  elevationDeg: null,
  limit: elevationLimitDeg === undefined ? null : { limitDeg: elevationLimitDeg, limitFrom: 'marked' },
  aboveSinceMs: null,
  lookedMs: null,
  newest: null,
  feedback: NO_FEEDBACK,
});

/** What one frame tells. */
interface GlideFrame {
  readonly sample: LegSample;
  readonly leg: LiveLeg;
  /** The foot's angle; null: not measured. */
  readonly footDeg: Deg | null;
}

/** Takes the next frame in: how high the leg is, how far the head is lifted. */
export function seeGlide(before: LiveGlideState, { sample, leg, footDeg }: GlideFrame): LiveGlideState {
  const { tMs, points, other } = sample;
  const { facing } = leg;
  const shank = leg.directions.shank;
  if (!facing) return before;
  const shankDeg = shank && deg(shank.deg + leg.levelDeg);
  const aboveShankDeg = shankDeg === null ? null : aboveShank(sample, shankDeg, facing);
  const levelDeg = other && levelSeen(sample, facing);
  const from = firstAtLeast(before.recent, tMs - REMEMBERED_MS, (m) => m.tMs);
  const kept = before.recent.slice(Math.max(from, before.recent.length + 1 - MOST_MOMENTS));
  const above = median([...kept.flatMap((m) => m.aboveShankDeg ?? []), ...(aboveShankDeg === null ? [] : [aboveShankDeg])]);
  const posed = points !== null;
  const level = usualLevel([...kept.filter((m) => m.posed).map((m) => m.levelDeg), ...(posed ? [levelDeg] : [])]) ?? 0;
  const measured = footDeg !== null && shankDeg !== null && above !== null;
  const elevationDeg = measured ? deg(elevationInPicture(shankDeg, deg(above), facing) - level) : null;
  const headDeg = liftOf(faceLine(sample), sample, facing);
  return { ...before, recent: [...kept, { tMs, footDeg, headDeg, aboveShankDeg, levelDeg, elevationDeg, posed }], elevationDeg };
}

/** The set has begun: what came before its stillness is no glide, and without a marked limit the leg is to stay where it is. */
export function beginGlide(before: LiveGlideState, tMs: Ms): LiveGlideState {
  const still = before.recent.filter((m) => m.tMs >= tMs - AT_START_MS);
  const held = median(still.flatMap(({ elevationDeg }) => elevationDeg ?? []));
  const limit: HeldLimit | null = before.limit ?? (held === null ? null : { limitDeg: deg(held), limitFrom: 'held' });
  return { ...before, limit, recent: still };
}

/** Whether the leg has now been above its limit for too long. */
export function heedLimit(before: LiveGlideState, tMs: Ms): readonly [LiveGlideState, boolean] {
  const { elevationDeg, limit, aboveSinceMs } = before;
  // A frame in which the leg is not measured changes nothing.
  if (elevationDeg === null || !limit) return [before, false];
  if (!isAbove(elevationDeg, limit)) return [{ ...before, aboveSinceMs: null }, false];
  const sinceMs = aboveSinceMs ?? tMs;
  return [{ ...before, aboveSinceMs: sinceMs }, tMs - sinceMs >= ABOVE_MS];
}

/**
 * The cycles that are over by now and were not told before, and what is to be said of them.
 * @param last whether nothing more comes: then a cycle is not waited for
 */
export function hearGlides(before: LiveGlideState, tMs: Ms, last: boolean): readonly [LiveGlideState, readonly SetEvent[]] {
  if (!last && before.lookedMs !== null && tMs - before.lookedMs < LOOK_MS) return [before, []];
  let { newest, feedback } = before;
  const events: SetEvent[] = [];
  for (const cycle of glideCoordination(before.recent).cycles) {
    const lastsMs = cycle.endMs - cycle.startMs;
    const settledMs = last ? 0 : SETTLED_MS + SETTLED_SHARE * lastsMs;
    const isNew = newest === null || cycle.startMs >= newest.endMs - SETTLED_SHARE * lastsMs;
    if (!isNew || cycle.endMs + settledMs >= tMs) continue;
    newest = cycle;
    events.push({ kind: 'glide', cycle });
    const [heeded, fault] = heedCycle(feedback, cycle, tMs);
    feedback = heeded;
    if (fault !== null) events.push(fault === 'wrong' ? { kind: 'glide-wrong' } : { kind: 'glide-trouble', what: fault });
  }
  return [{ ...before, newest, feedback, lookedMs: tMs }, events];
}

/** What is shown of it. */
export function glideView({ recent, elevationDeg, limit, newest }: LiveGlideState): LiveGlide {
  const latestMs = recent.at(-1)?.tMs ?? 0;
  const now = median(recent.slice(firstAtLeast(recent, latestMs - NOW_MS, (m) => m.tMs)).flatMap((m) => m.headDeg ?? []));
  const rest = headRest(recent.map((m) => m.headDeg));
  return {
    headDeg: now === null || rest === null ? null : deg(now - rest),
    elevationDeg,
    limitDeg: limit?.limitDeg ?? null,
    pattern: newest?.pattern ?? null,
  };
}
