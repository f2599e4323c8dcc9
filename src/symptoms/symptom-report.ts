import type { Entry } from './entry.ts';
import type { Felt } from './felt.ts';

/** Symptoms before or after a set. */
export interface SymptomReport extends Entry, Felt {
  readonly kind: 'symptoms';
  readonly moment: 'before-set' | 'after-set';
  /** The set, measured or counted by hand; null when none followed. */
  readonly setId: string | null;
  /** The prescribed exercise that it was a set of; null when it was none. */
  readonly itemId: string | null;
}
