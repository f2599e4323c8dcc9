import type { ComparableSet } from '../../compare/set-against-set.ts';
import { keptReps } from '../parts/kept-reps.ts';
import type { ShownSet } from '../services.ts';

/** A stored set as it is compared, with the changes by hand applied; null for a therapist's own exercise, whose error is not known. */
export function comparableOf(set: ShownSet): ComparableSet | null {
  const { exercise, side } = set;
  return exercise === 'own' ? null : { exercise, side, reps: keptReps(set) };
}

/** What a set can be compared with. */
export interface Companions {
  /** Of the other leg, the nearest in time first. */
  readonly otherLeg: readonly ShownSet[];
  /** Of the same leg, done before it, the latest first. */
  readonly sameLeg: readonly ShownSet[];
}

/** The sets of the same exercise that can stand beside this one: finished, with something counted. */
export function companionsOf(set: ShownSet, all: readonly ShownSet[]): Companions {
  const when = (s: ShownSet) => Date.parse(s.startedAt);
  const fit = all.filter(
    (other) =>
      other.id !== set.id &&
      other.exercise === set.exercise &&
      other.exercise !== 'own' &&
      other.state !== 'running' &&
      keptReps(other).some((rep) => rep.complete),
  );
  const away = (s: ShownSet) => Math.abs(when(s) - when(set));
  return {
    otherLeg: fit.filter((s) => s.side !== set.side).sort((a, b) => away(a) - away(b)),
    sameLeg: fit.filter((s) => s.side === set.side && when(s) < when(set)).sort((a, b) => when(b) - when(a)),
  };
}
