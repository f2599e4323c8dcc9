import { type CounterState, startCounter, stepCounter } from '../../src/reps/live-counter.ts';
import type { Movement } from '../../src/reps/movement.ts';
import type { RepRule } from '../../src/reps/rep-rule.ts';
import { deg, ms } from '../../src/units.ts';

/** The exercise's angle through a set, as it is measured when the set is over; null where it was not. */
interface Curve {
  readonly tMs: readonly number[];
  readonly angleDeg: readonly (number | null)[];
}

/** A movement as told live: which one, and when. */
export interface Heard {
  readonly peakMs: number;
  readonly atMs: number;
}

/** How late movements were told. */
export interface CountDelays {
  /** One for each movement told that the finished curve has too, ms; below 0 where it was told before. */
  readonly delaysMs: readonly number[];
  /** Movements told that the finished curve does not have. */
  readonly unmatched: number;
  /** Movements of the finished curve that were not told. */
  readonly missed: number;
}

/** How finely the line between two samples is walked, ms: as exactly the moment is known. */
const STEP_MS = 1;

/**
 * The movements of a finished set, each ending at the moment it could first be known: when the live counter's own rule calls it over on the set's finished
 * curve. That curve is smoothed with what came later too, so that it has neither lag nor noise to wait for, and is walked as a line from sample to sample, so
 * that no picture has to be waited for either.
 */
export function knowable({ tMs, angleDeg }: Curve, rule: RepRule): readonly Movement[] {
  const sign = rule.direction === 'rises' ? 1 : -1;
  const movements: Movement[] = [];
  let state: CounterState | null = null;
  for (const [at, angle] of walked({ tMs, angleDeg })) {
    if (!state) {
      state = startCounter(ms(at), deg(sign * angle));
      continue;
    }
    const [next, movement]: readonly [CounterState, Movement?] = stepCounter(state, ms(at), deg(sign * angle), rule);
    state = next;
    if (movement) movements.push(movement);
  }
  return movements;
}

function* walked({ tMs, angleDeg }: Curve): Generator<readonly [tMs: number, angleDeg: number]> {
  for (let i = 0; i < tMs.length; i++) {
    const to = tMs[i] as number;
    const angle = angleDeg[i] ?? null;
    if (angle === null) continue;
    const from = tMs[i - 1];
    const before = angleDeg[i - 1] ?? null;
    if (from !== undefined && before !== null) {
      for (let at = from + STEP_MS; at < to; at += STEP_MS) yield [at, before + ((angle - before) * (at - from)) / (to - from)];
    }
    yield [to, angle];
  }
}

/** Each movement told live against the one of the finished curve in which its peak lies. */
export function countDelays(heard: readonly Heard[], known: readonly Movement[]): CountDelays {
  const delaysMs: number[] = [];
  const left = [...known];
  for (const { peakMs, atMs } of heard) {
    const at = left.findIndex((m) => m.startMs <= peakMs && peakMs <= m.endMs);
    const [same] = at < 0 ? [] : left.splice(at, 1);
    if (same) delaysMs.push(atMs - same.endMs);
  }
  return { delaysMs, unmatched: heard.length - delaysMs.length, missed: left.length };
}
