import type { Brought } from '../../../src/record/file/record-store.ts';

/** What the page has shown or begun, in order. */
export type Told =
  | { readonly kind: 'counted'; readonly setId: string; readonly number: number }
  | { readonly kind: 'ended'; readonly setId: string; readonly reps: number }
  | { readonly kind: 'changed'; readonly setId: string; readonly editId: string }
  | { readonly kind: 'saving' | 'saved'; readonly ids: readonly string[] }
  | { readonly kind: 'bringing' | 'brought'; readonly person: string; readonly sets: number; readonly entries: number }
  | { readonly kind: 'trouble'; readonly what: string };

/** What the program finds in its database, read through its own store. */
export interface Kept {
  readonly sets: readonly {
    readonly id: string;
    readonly state: string;
    readonly numbers: readonly number[];
    readonly edits: readonly string[];
  }[];
  readonly entries: readonly string[];
  readonly people: readonly { readonly id: string; readonly sets: number; readonly entries: number }[];
  /** Rows that do not have their shape. */
  readonly faults: readonly string[];
  /** Sets of which there are repetitions, results or changes, but no set. */
  readonly strays: readonly string[];
}

export interface TrialPage {
  readonly kept: () => Promise<Kept>;
  /** Works until the browser ends. @param recordings landmark recordings, as text */
  readonly begin: (recordings: readonly string[]) => void;
  /** Takes in a record of so many sets; `underWay` hears the share that is written. */
  readonly bringMany: (count: number) => Promise<Brought>;
}

/** What was shown and is not there, or there and not whole; empty: nothing was lost. */
export function lost(told: readonly Told[], kept: Kept): readonly string[] {
  const sets = new Map(kept.sets.map((set) => [set.id, set]));
  const people = new Map(kept.people.map((person) => [person.id, person]));
  const entries = new Set(kept.entries);
  const ended = new Set(told.flatMap((each) => (each.kind === 'ended' ? [each.setId] : [])));
  const missing = (each: Told): string | null => {
    switch (each.kind) {
      case 'counted':
        // After the set it is measured anew, and the result numbers its repetitions by itself.
        return ended.has(each.setId) ||
          sets.get(each.setId)?.state === 'finished' ||
          sets.get(each.setId)?.numbers.includes(each.number)
          ? null
          : `repetition ${each.number} of ${each.setId}`;
      case 'ended': {
        const set = sets.get(each.setId);
        return set?.state === 'finished' && set.numbers.length === each.reps ? null : `the end of ${each.setId}`;
      }
      case 'changed':
        return sets.get(each.setId)?.edits.includes(each.editId) ? null : `change ${each.editId}`;
      case 'saving': {
        const there = each.ids.filter((id) => entries.has(id)).length;
        return there === 0 || there === each.ids.length ? null : `${there} of ${each.ids.length} entries`;
      }
      case 'saved':
        return each.ids.every((id) => entries.has(id)) ? null : `entries ${each.ids.join(' ')}`;
      case 'bringing': {
        const there = people.get(each.person);
        return !there || (there.sets === each.sets && there.entries === each.entries) ? null : `half of ${each.person}`;
      }
      case 'brought':
        return people.has(each.person) ? null : `the record of ${each.person}`;
      case 'trouble':
        return `trouble: ${each.what}`;
      default:
        return each satisfies never;
    }
  };
  const running = kept.sets.filter(({ state }) => state === 'running').map(({ id }) => `${id} still runs`);
  const strays = kept.strays.map((id) => `something of ${id} without its set`);
  return [...told.map(missing).filter((each) => each !== null), ...running, ...kept.faults, ...strays];
}
