import type { SetResult } from '../../src/measure/set-result.ts';
import type { DiaryEntry } from '../../src/record/diary-entry.ts';
import type { StoredSet } from '../../src/record/stored-set.ts';
import { ms } from '../../src/units.ts';
import { HEEL_SLIDE } from '../record/own-definitions.ts';
import { idOf, rep, result } from '../record/set-builders.ts';
import { entry, momentOf } from '../symptoms/told.ts';
import { measured } from './lived-records.ts';

const setOf = (n: number, found: SetResult, over: Partial<StoredSet> = {}): StoredSet => ({
  id: idOf(n),
  schema: 2,
  startedAt: momentOf(5, n - 20),
  exercise: found.exercise,
  side: found.side,
  targetReps: null,
  person: 'me',
  source: 'camera',
  model: 'full',
  state: 'finished',
  reps: found.reps,
  result: found,
  edits: [],
  ...over,
});

const standing: SetResult = {
  ...result([rep(1, { upMs: ms(12_400), sankAfterMs: ms(9100), flags: ['sinking'] })]),
  exercise: 'heel-stand',
  side: 'right',
};

/**
 * Sets of the other kinds, on day 5, none of them asked for by a plan: big toe lifts of both feet by stickers, glides that slide and
 * that pull, a stand on the heels, a therapist's own exercise, one that broke off before its first repetition; and what was taken back, known and not.
 */
export function otherSets(): { readonly sets: readonly StoredSet[]; readonly diary: readonly DiaryEntry[] } {
  const removal = (
    n: number,
    what: Extract<DiaryEntry, { readonly kind: 'removal' }>['what'],
    of: 'set' | 'hand-set',
  ): DiaryEntry => ({
    ...entry(5, n - 20),
    id: idOf(n + 100),
    kind: 'removal',
    recordId: idOf(n),
    of,
    what,
  });
  return {
    sets: [
      setOf(27, measured('toe-right-weak.json'), { model: 'stickers' }),
      setOf(28, measured('toe-left-green.json'), { model: 'stickers' }),
      setOf(29, measured('glide-left-sliding.json')),
      setOf(30, measured('glide-right-tension.json')),
      setOf(31, standing),
      setOf(32, { ...result([rep(1), rep(2)]), exercise: 'own', side: 'left' }, { exercise: 'own', definition: HEEL_SLIDE }),
      setOf(33, measured('knee-right-straighten.json'), { state: 'interrupted', reps: [], result: null }),
    ],
    diary: [
      removal(34, { exercise: 'toe-lift', side: 'right', doneAt: momentOf(4, 9) }, 'set'),
      removal(35, { exercise: 'own', side: 'left', doneAt: momentOf(4, 10) }, 'set'),
      removal(36, { exercise: 'heel-stand', side: 'left', doneAt: momentOf(4, 11) }, 'hand-set'),
      removal(37, null, 'set'),
    ],
  };
}
