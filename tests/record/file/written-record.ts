import type { DiaryEntry } from '../../../src/record/diary-entry.ts';
import { type RecordFile, readRecord } from '../../../src/record/file/read-record.ts';
import type { RecordManifest } from '../../../src/record/file/record-manifest.ts';
import { writeRecord } from '../../../src/record/file/write-record.ts';
import type { StoredSet } from '../../../src/record/stored-set.ts';
import { checkIn, redFlags, report } from '../../symptoms/told.ts';
import { edit, header, idOf, momentOf, rep, result } from '../set-builders.ts';
import { wentWell } from '../went-well.ts';

/** An invented passphrase, and as few rounds as a file may ask for: what is tested is not how slow guessing is. */
export const PASSPHRASE = 'four blue kites';
export const FEW_ROUNDS = 1000;

export const WHOSE: RecordManifest['person'] = { ids: [idOf(900)], name: null, affectedSide: null };

/** A finished set with changes by hand, one that broke off, one of a therapist's own exercise left out. */
export const someSets = (): readonly StoredSet[] => [
  {
    ...header({ id: idOf(1), startedAt: momentOf(1) }),
    state: 'finished',
    reps: [rep(1), rep(2)],
    result: result([rep(1), rep(2)]),
    edits: [edit({ kind: 'strike', rep: { kind: 'measured', number: 1 } }), edit({ kind: 'add' })],
  },
  { ...header({ id: idOf(2), startedAt: momentOf(2) }), state: 'interrupted', reps: [rep(1)], result: null, edits: [] },
];
export const someEntries = (): readonly DiaryEntry[] => [report(3, 9), checkIn(4, 8), redFlags(4, 7)];

export const written = (
  sets: readonly StoredSet[],
  diary: readonly DiaryEntry[],
  { passphrase = null, person = WHOSE }: { readonly passphrase?: string | null; readonly person?: RecordManifest['person'] } = {},
): Promise<Uint8Array<ArrayBuffer>> =>
  writeRecord({ createdAt: momentOf(500), person, diary, pages: [sets] }, passphrase, crypto, FEW_ROUNDS);

/** A record as it is once it was written and read. */
export const recordOf = async (sets: readonly StoredSet[], diary: readonly DiaryEntry[], person = WHOSE): Promise<RecordFile> =>
  wentWell(await readRecord(await written(sets, diary, { person }), null, crypto));
