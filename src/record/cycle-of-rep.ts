import type { MeasuredRep } from '../measure/set-result.ts';
import type { GlideCycle } from '../reps/glide-coordination.ts';

type Times = Pick<GlideCycle, 'startMs' | 'endMs'>;

const shared = (a: Times, b: Times): number => Math.min(a.endMs, b.endMs) - Math.max(a.startMs, b.startMs);

/** Whether two stretches of time are one movement: half of the shorter lies in the other. */
const isSame = (a: Times, b: Times): boolean =>
  shared(a, b) > 0 && shared(a, b) >= Math.min(a.endMs - a.startMs, b.endMs - b.startMs) / 2;

/**
 * The cycle of a glide that a repetition is. The foot's repetitions and the cycles of foot and head are found apart, so that their ends differ a little, and
 * either may have one that the other has not.
 * @returns of several the one with which it shares most time; null when there is none
 */
export function cycleOfRep(rep: Pick<MeasuredRep, 'startMs' | 'endMs'>, cycles: readonly GlideCycle[]): GlideCycle | null {
  return cycles
    .filter((cycle) => isSame(rep, cycle))
    .reduce<GlideCycle | null>((best, cycle) => (best && shared(rep, best) >= shared(rep, cycle) ? best : cycle), null);
}
