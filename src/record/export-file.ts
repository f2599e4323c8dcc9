import type { Entry } from '../symptoms/entry.ts';
import type { DiaryEntry } from './diary-entry.ts';
import type { Damaged } from './diary-store.ts';
import type { Person } from './person.ts';
import type { StoredSet } from './stored-set.ts';
import { linksBySet, originOf } from './table-sets.ts';

/** Everything stored of one person as one value, see docs/export-format.md. */
export interface ExportFile {
  readonly evenside: 'export';
  readonly version: 1;
  /** ISO 8601, UTC. */
  readonly exportedAt: string;
  /** Whose it is, of somebody in a therapist's list; left out: one's own. */
  readonly person?: Person;
  /** Oldest first. `example`: invented, not the person's own. */
  readonly sets: readonly (StoredSet & { readonly origin: Entry['origin'] })[];
  /** By the moment they were told, the oldest first. */
  readonly diary: readonly DiaryEntry[];
  /** What is stored but can't be read, and so is not in here. */
  readonly damaged: readonly Damaged[];
}

/**
 * Puts together what goes out.
 * @param exportedAt ISO 8601, UTC
 * @param person of somebody in a therapist's list; null: one's own
 */
export function exportFile(
  { sets, diary, damaged }: Pick<ExportFile, 'diary' | 'damaged'> & { readonly sets: readonly StoredSet[] },
  exportedAt: string,
  person: Person | null = null,
): ExportFile {
  const links = linksBySet(diary);
  const oldestFirst = sets.toSorted((a, b) => (a.startedAt < b.startedAt ? -1 : Number(a.startedAt > b.startedAt)));
  return {
    evenside: 'export',
    version: 1,
    exportedAt,
    ...(person ? { person } : {}),
    sets: oldestFirst.map((set) => ({ origin: originOf(set, links.get(set.id) ?? null), ...set })),
    diary,
    damaged,
  };
}
