import type { ProblemKind } from '../services.ts';
import type { Words } from '../words/words.ts';

/** Why the running set is not on the disk: `late`: the disk may still take it; `full`: there is no room; `failed`: nothing can be written. */
export type StoreTrouble = 'late' | 'full' | 'failed';

/** @param kind what the last write came to; null: all is on the disk */
export function troubleOf(kind: ProblemKind | null): StoreTrouble | null {
  if (kind === null) return null;
  if (kind === 'store-stalled' || kind === 'store-refused') return 'late';
  return kind === 'store-full' ? 'full' : 'failed';
}

/** The line that stands on the set's screen meanwhile. */
export const troubleSays = (trouble: StoreTrouble, { set, away }: Pick<Words, 'set' | 'away'>): string =>
  trouble === 'late' ? set.storeTrouble : away.notStored[trouble];
