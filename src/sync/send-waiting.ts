import { transactionBundle } from '../fhir/bundles.ts';
import type { Context } from '../fhir/prepared.ts';
import type { DiaryEntry } from '../record/diary-entry.ts';
import type { StoreError } from '../record/store-error.ts';
import type { Connection, SyncStore } from '../record/sync/sync-store.ts';
import { fail, ok, type Result } from '../result.ts';
import { batchesOf, resourcesIn } from './batches.ts';
import type { FhirServer } from './fhir-server.ts';
import type { Surroundings } from './http.ts';
import { type Parcel, parcelsOf } from './parcels.ts';
import { isAboutContent, type ServerError } from './server-error.ts';

/** Sets read whole at a time. Chosen: some megabytes. */
const SETS_AT_ONCE = 40;

export interface Sent {
  /** How many records the server has now that it had not confirmed before. */
  readonly confirmed: number;
  /** Records that the server does not want, with its words. They stay here and are tried again the next time. */
  readonly unwanted: readonly { readonly ids: readonly string[]; readonly why: ServerError }[];
}

export interface SendJob {
  readonly around: Surroundings;
  readonly server: FhirServer;
  readonly store: SyncStore;
  readonly connection: Connection;
  /** The whole diary of the person: which plan holds. */
  readonly diary: () => Promise<Result<readonly DiaryEntry[], StoreError>>;
  readonly context: Omit<Context, 'diary' | 'subject'>;
}

type Outcome = Result<void, ServerError | StoreError>;

/** A transaction says of each entry that it is there now. */
const isDone = (answer: Readonly<Record<string, unknown>>, entries: number): boolean =>
  answer.type === 'transaction-response' && Array.isArray(answer.entry) && answer.entry.length === entries;

/**
 * Sends all that waits, in transactions of bounded size; each is confirmed here once the server has said so. Whatever is cut off in between is sent again the
 * next time and adds nothing there. What a server does not want is found by halving, so that it does not hold up the rest.
 */
export async function sendWaiting(job: SendJob): Promise<Result<Sent, ServerError | StoreError>> {
  const { around, server, store, connection } = job;
  const { person, patient } = connection;
  const unwanted: { ids: readonly string[]; why: ServerError }[] = [];
  let confirmed = 0;

  const send = async (parcels: readonly Parcel[]): Promise<Outcome> => {
    const prepared = resourcesIn(parcels);
    const answer = await server.post(transactionBundle(prepared, around.newId));
    if (answer.ok && !isDone(answer.value, prepared.length)) return fail({ kind: 'not-fhir' });
    if (!answer.ok) {
      if (!isAboutContent(answer.error)) return answer;
      if (parcels.length === 1) {
        unwanted.push({ ids: parcels.flatMap(({ confirms }) => confirms), why: answer.error });
        return ok(undefined);
      }
      const half = Math.ceil(parcels.length / 2);
      const first = await send(parcels.slice(0, half));
      return first.ok ? send(parcels.slice(half)) : first;
    }
    const ids = parcels.flatMap(({ confirms }) => confirms);
    const noted = await store.confirm(person, ids);
    if (noted.ok) confirmed += ids.length;
    return noted;
  };

  const unwantedIds = () => new Set(unwanted.flatMap(({ ids }) => ids));
  for (let most = SETS_AT_ONCE; ; most = SETS_AT_ONCE + unwantedIds().size) {
    const waiting = await store.waiting(person, most);
    if (!waiting.ok) return waiting;
    if (waiting.value.ids.size === unwantedIds().size) break;
    const diary = await job.diary();
    if (!diary.ok) return diary;
    const context: Context = { ...job.context, subject: { kind: 'existing', reference: patient }, diary: diary.value };
    const skipped = unwantedIds();
    const parcels = parcelsOf(context, waiting.value).filter(({ confirms }) => !confirms.every((id) => skipped.has(id)));
    if (parcels.length === 0) break;
    for (const batch of batchesOf(parcels)) {
      const sent = await send(batch);
      if (!sent.ok) return sent;
    }
  }
  return ok({ confirmed, unwanted });
}
