import type { Observation } from '../../src/measure/observation.ts';
import { finishSet, type SetSpec, startSet, stepSet } from '../../src/measure/set.ts';
import type { SetMeasure } from '../../src/measure/set-measure.ts';
import type { MeasuredRep } from '../../src/measure/set-result.ts';
import { stickerMeasure } from '../../src/measure/sticker-set.ts';

/** Why a repetition that was shown as counted is not in the result: small beside the others, cut by a gap or by the set's end, or not found again. */
const LOST = ['small', 'gap', 'unfinished', 'unsure'] as const;
/** How a repetition got into the result that was not shown as counted. */
const WON = ['before-ready', 'shown-as-small', 'just-back', 'unheard'] as const;
export type Difference = (typeof LOST)[number] | (typeof WON)[number];
/** A lift is just back for as long, ms. */
const JUST_MS = 150;

/** A set stopped after one of its frames. */
export interface Stop {
  readonly tMs: number;
  /** The count shown then, and the complete repetitions of the result. */
  readonly shown: number;
  readonly kept: number;
  /** As the result itself says it. */
  readonly lost: readonly Difference[];
  readonly won: readonly Difference[];
}

/** The set of these observations, stopped after every `every`-th of them from the `first`-th on, and at its end. */
export const stoppedAnywhere = (spec: SetSpec, observations: readonly Observation[], every = 1, first = 0): readonly Stop[] =>
  spec.seenBy === 'stickers'
    ? stopsOf(stickerMeasure, (s) => s.counting, { spec, observations, every, first })
    : stopsOf({ startSet, stepSet, finishSet }, (s) => s, { spec, observations, every, first });

interface Counted {
  readonly reps: readonly MeasuredRep[];
  readonly count: number;
  readonly readyMs: number | null;
  readonly phase: string;
}

interface Watched {
  readonly spec: SetSpec;
  readonly observations: readonly Observation[];
  readonly every: number;
  readonly first: number;
}

function stopsOf<S>(
  measure: Pick<SetMeasure<S>, 'startSet' | 'stepSet' | 'finishSet'>,
  countedOf: (state: S) => Counted,
  { spec, observations, every, first }: Watched,
): readonly Stop[] {
  let state = measure.startSet(spec);
  const stops: Stop[] = [];
  for (const [i, seen] of observations.entries()) {
    state = measure.stepSet(state, seen).state;
    const counted = countedOf(state);
    const over = counted.phase === 'ended' || i === observations.length - 1;
    if (i % every === first || over) {
      const { reps, count, notFound = 0 } = measure.finishSet(state);
      const judged = reps.filter((rep) => rep.flags.includes('recounted'));
      stops.push({
        tMs: seen.tMs,
        shown: counted.count,
        kept: count,
        lost: [...judged.filter((rep) => !rep.complete).map(lossOf), ...Array<Difference>(notFound).fill('unsure')],
        won: judged.filter((rep) => rep.complete).map((rep) => gainOf(rep, counted, seen.tMs)),
      });
    }
    if (over) break;
  }
  return stops;
}

function lossOf({ flags }: MeasuredRep): Difference {
  if (flags.includes('doubtful')) return 'unsure';
  if (flags.includes('unfinished')) return 'unfinished';
  return flags.includes('tracking-gap') ? 'gap' : 'small';
}

function gainOf({ startMs, peakMs, endMs }: MeasuredRep, { reps, readyMs }: Counted, stopMs: number): Difference {
  if (readyMs === null || peakMs < readyMs) return 'before-ready';
  if (reps.some((heard) => !heard.complete && heard.peakMs >= startMs && heard.peakMs <= endMs)) return 'shown-as-small';
  return stopMs - endMs < JUST_MS ? 'just-back' : 'unheard';
}

/** How often the counts differ, and by which differences, as a line of a table. */
export function tallied(name: string, stops: readonly Stop[]): string {
  const kinds = new Map<Difference, number>();
  for (const kind of stops.flatMap(({ lost, won }) => [...lost, ...won])) kinds.set(kind, (kinds.get(kind) ?? 0) + 1);
  const more = stops.filter(({ shown, kept }) => shown > kept).length;
  const less = stops.filter(({ shown, kept }) => shown < kept).length;
  const why = [...kinds].map(([kind, n]) => `${kind} ${n}`).join(', ');
  return `| ${name} | ${stops.length} | ${more} | ${less} | ${why} |`;
}
