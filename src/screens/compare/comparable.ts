import type { ComparableSet } from '../../compare/set-against-set.ts';
import type { SeenBy } from '../../exercises/exercise.ts';
import { keptReps } from '../parts/kept-reps.ts';
import type { ShownSet } from '../services.ts';

/** A stored set as it is compared, with the changes by hand applied; null for a therapist's own exercise, whose error is not known. */
export function comparableOf(set: ShownSet): ComparableSet | null {
  const { exercise, side } = set;
  return exercise === 'own' ? null : { exercise, side, reps: keptReps(set) };
}

/** How a stored set was measured. */
export const wayOf = ({ model }: Pick<ShownSet, 'model'>): SeenBy => (model === 'stickers' ? 'stickers' : 'pose');

/** What a set can be compared with. */
export interface Companions {
  /** Of the other leg, the nearest in time first; those measured in the other way come last. */
  readonly otherLeg: readonly ShownSet[];
  /** Of the same leg, done before it, the latest first; those measured in the other way come last. */
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
  const unlike = (s: ShownSet) => (wayOf(s) === wayOf(set) ? 0 : 1);
  return {
    otherLeg: fit.filter((s) => s.side !== set.side).sort((a, b) => unlike(a) - unlike(b) || away(a) - away(b)),
    sameLeg: fit
      .filter((s) => s.side === set.side && when(s) < when(set))
      .sort((a, b) => unlike(a) - unlike(b) || when(b) - when(a)),
  };
}
