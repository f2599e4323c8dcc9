import { uniformFrom } from '../../src/flow/prng.ts';
import type { Observation } from '../../src/measure/observation.ts';
import { ms } from '../../src/units.ts';

/** The recording shown over and over, from `fromMs` to `toMs` of it, as a camera in front of a clip that jumps back to its beginning. */
export function looped(
  observations: readonly Observation[],
  { fromMs, toMs, rounds }: { readonly fromMs: number; readonly toMs: number; readonly rounds: number },
): readonly Observation[] {
  const part = observations.filter(({ tMs }) => tMs >= fromMs && tMs < toMs);
  return Array.from({ length: rounds }, (_, round) =>
    part.map((seen) => ({ ...seen, tMs: ms(seen.tMs - fromMs + round * (toMs - fromMs)) })),
  ).flat();
}

/** The rate changes after so long, ms. */
const RATE_LASTS_MS = 3000;
/** A hole comes after about so long, ms. */
const HOLE_EVERY_MS = 4000;

/** What a busy machine has time for: `from` to `to` pictures a second, changing, each a little early or late, with holes of up to `holeMs`. */
export function thinned(
  observations: readonly Observation[],
  seed: number,
  { from = 5, to = 16, holeMs = [200, 1000] as readonly [number, number] } = {},
): readonly Observation[] {
  const random = uniformFrom(seed);
  const between = (low: number, high: number) => low + (high - low) * random();
  const kept: Observation[] = [];
  let nextMs: number = observations[0]?.tMs ?? 0;
  let rateUntilMs = Number.NEGATIVE_INFINITY;
  let everyMs = 0;
  let holeAtMs = nextMs + 3000 + between(0.5, 1.5) * HOLE_EVERY_MS;
  for (const seen of observations) {
    if (seen.tMs > rateUntilMs) {
      everyMs = 1000 / between(from, to);
      rateUntilMs = seen.tMs + RATE_LASTS_MS;
    }
    if (seen.tMs < nextMs) continue;
    kept.push(seen);
    nextMs = seen.tMs + between(0.7, 1.3) * everyMs;
    if (seen.tMs >= holeAtMs) {
      nextMs = seen.tMs + between(...holeMs);
      holeAtMs = nextMs + between(0.5, 1.5) * HOLE_EVERY_MS;
    }
  }
  return kept;
}

/** When something happened in a set that shows a recording over and over. */
export const inRounds = <T extends { readonly startMs: number; readonly peakMs: number; readonly endMs: number }>(
  list: readonly T[],
  { fromMs, toMs, rounds }: { readonly fromMs: number; readonly toMs: number; readonly rounds: number },
): readonly T[] =>
  Array.from({ length: rounds }, (_, round) => {
    const later = round * (toMs - fromMs) - fromMs;
    return list.map((each) => ({
      ...each,
      startMs: each.startMs + later,
      peakMs: each.peakMs + later,
      endMs: each.endMs + later,
    }));
  }).flat();
