import { writeRecord } from '../../record/file/write-record.ts';
import { newId } from '../../record/new-id.ts';
import { type PersonId, SELF } from '../../record/person.ts';
import type { StoredSet } from '../../record/stored-set.ts';

/** A record file with one set: it can be taken in again, here or on another machine. Nothing of it is asked from the disk. */
export async function unstoredFile(set: StoredSet, person: PersonId): Promise<Blob> {
  const whose = { ids: [person === SELF ? newId() : person], name: null, affectedSide: null };
  const record = { createdAt: new Date().toISOString(), person: whose, diary: [], pages: [[set]] };
  return new Blob([await writeRecord(record, null, crypto)], { type: 'application/zip' });
}
