import type { Naming } from '../fhir/naming.ts';
import { type ReadRecords, recordsOf } from '../fhir/records-of.ts';
import type { RecordStore, TakeInError } from '../record/file/record-store.ts';
import type { RepEdit } from '../record/rep-edit.ts';
import type { SetStore } from '../record/set-store.ts';
import type { StoreError } from '../record/store-error.ts';
import type { StoredSet } from '../record/stored-set.ts';
import type { Connection, SyncStore } from '../record/sync/sync-store.ts';
import { fail, ok, type Result } from '../result.ts';
import { recordFileOf } from './brought-records.ts';
import { type DocumentPage, documentsUrl, eachPage } from './document-pages.ts';
import type { FhirServer } from './fhir-server.ts';
import type { Surroundings } from './http.ts';
import type { ServerError } from './server-error.ts';

/**
 * How far before the last moment it is asked again: what was being written then may have become visible later, and several have one moment. What is there
 * already changes nothing. Chosen: longer than any transaction of ours takes.
 */
export const OVERLAP_MS = 120_000;

export interface Taken {
  /** Sets and entries that were not here. */
  readonly fresh: number;
  /** Sets of which more is known now. */
  readonly grown: number;
  /** What stands here under the same id with other content; what is here stays. */
  readonly conflicts: number;
  /** Documents that can't be read, by reason. */
  readonly refused: readonly ReadRecords['refused'][number]['why'][];
  /** Changes by hand of sets that are neither here nor there. They are asked for again the next time. */
  readonly early: number;
}

export interface TakeInJob {
  readonly around: Surroundings;
  readonly server: FhirServer;
  readonly store: SyncStore;
  readonly records: RecordStore;
  readonly sets: Pick<SetStore, 'read'>;
  readonly naming: Naming;
  readonly connection: Connection;
}

type Failure = ServerError | StoreError | TakeInError;

/** Sets that are here already, with changes that came without them. */
async function withEdits(
  sets: TakeInJob['sets'],
  edits: readonly RepEdit[],
  removed: () => Promise<Result<ReadonlySet<string>, StoreError>>,
): Promise<Result<{ readonly known: readonly StoredSet[]; readonly early: readonly RepEdit[] }, StoreError>> {
  const known: StoredSet[] = [];
  const early: RepEdit[] = [];
  for (const id of new Set(edits.map(({ setId }) => setId))) {
    const ofSet = edits.filter(({ setId }) => setId === id);
    const found = await sets.read(id);
    if (found.ok) {
      const here = new Set(found.value.edits.map((edit) => edit.id));
      known.push({ ...found.value, edits: [...found.value.edits, ...ofSet.filter((edit) => !here.has(edit.id))] });
      continue;
    }
    const { error } = found;
    if (error.kind === 'set-missing') {
      // A set that was taken back does not come any more, and its changes wait for nothing.
      const gone = await removed();
      if (!gone.ok) return gone;
      if (!gone.value.has(id)) early.push(...ofSet);
      continue;
    }
    // One that can't be read, or runs, stays as it is; the change is with the server.
    if (error.kind !== 'set-damaged' && error.kind !== 'set-running' && error.kind !== 'rep-missing') return fail(error);
  }
  return ok({ known, early });
}

const earlier = (at: string): string => new Date(Date.parse(at) - OVERLAP_MS).toISOString();

/**
 * Takes in what the server has of a person since the last time: page by page, each joined with what is here wholly or not at all, and the moment up to which it
 * went is kept after each, so that it goes on from there after a cut.
 */
export async function takeInNew(job: TakeInJob): Promise<Result<Taken, Failure>> {
  const { around, server, store, records, naming } = job;
  const { person, patient } = job.connection;
  let now = job.connection;
  let [fresh, grown, conflicts] = [0, 0, 0];
  const refused: Taken['refused'][number][] = [];
  let early: readonly RepEdit[] = [];
  let madeAt: string | null = null;

  /** Nothing is passed over: while a change waits for its set, the moment stays where it was. */
  const reached = async (cursor: string | null, takenAt: string | null): Promise<Result<void, StoreError>> => {
    const isLater = cursor !== null && early.length === 0 && (now.cursor === null || cursor > now.cursor);
    now = { ...now, cursor: isLater ? cursor : now.cursor, takenAt: takenAt ?? now.takenAt };
    return store.save(now);
  };

  const onPage = async (page: DocumentPage): Promise<Result<void, Failure>> => {
    madeAt ??= page.madeAt;
    const found = recordsOf(page.bundle, naming);
    refused.push(...found.refused.map(({ why }) => why));
    const loose = await withEdits(
      job.sets,
      [...found.edits, ...early].filter(({ setId }) => !found.sets.some(({ id }) => id === setId)),
      () => records.removedOf(person),
    );
    if (!loose.ok) return loose;
    const arrivedNow = found.sets.map((set) => ({
      ...set,
      edits: [...set.edits, ...early.filter(({ setId }) => setId === set.id)],
    }));
    const sets = [...arrivedNow, ...loose.value.known].map((set) => ({ ...set, person }));
    early = loose.value.early;
    const joined = await records.taken(
      { kind: 'here', person },
      recordFileOf(sets, found.diary, new Date(around.nowMs()).toISOString()),
    );
    if (!joined.ok) return joined;
    fresh += joined.value.sets.fresh + joined.value.entries.fresh;
    grown += joined.value.sets.grown;
    conflicts += joined.value.conflicts;
    const known = [
      ...found.sets.flatMap((set) => [set.id, ...set.edits.map(({ id }) => id)]),
      ...found.edits.map(({ id }) => id),
      ...found.diary.map(({ id }) => id),
    ];
    const noted = await store.confirm(person, known);
    return noted.ok ? reached(page.newest, null) : noted;
  };

  const since = now.cursor === null ? null : earlier(now.cursor);
  const read = await eachPage(server, documentsUrl(server, naming, patient, since), onPage);
  if (!read.ok) return read;
  // All that was there when the first page was made is here now: the next time begins there, and not with the last record again.
  const kept = await reached(madeAt, new Date(around.nowMs()).toISOString());
  return kept.ok ? ok({ fresh, grown, conflicts, refused, early: early.length }) : kept;
}
