import type { DiaryEntry } from '../record/diary-entry.ts';
import { fileSetOf } from '../record/file/file-set.ts';
import type { RecordFile } from '../record/file/read-record.ts';
import type { StoredSet } from '../record/stored-set.ts';

/** Records from a server, in the form in which those of a file are joined with what is here: the same union serves both. */
export function recordFileOf(sets: readonly StoredSet[], diary: readonly DiaryEntry[], at: string): RecordFile {
  const edits = sets.reduce((sum, set) => sum + set.edits.length, 0);
  return {
    manifest: {
      evenside: 'record',
      version: 1,
      createdAt: at,
      // Who it is was told by hand when the server was connected.
      person: { ids: [], name: null, affectedSide: null },
      counts: { sets: sets.length, edits, entries: diary.length },
      parts: [],
    },
    setIds: sets.map(({ id }) => id),
    diary,
    span: null,
    sets: () => [sets.map(fileSetOf)],
  };
}
