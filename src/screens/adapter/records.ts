import { readRecord } from '../../record/file/read-record.ts';
import { RECORD_LIMITS } from '../../record/file/record-limits.ts';
import type { Brought, TakeInError } from '../../record/file/record-store.ts';
import { writeRecord } from '../../record/file/write-record.ts';
import { ROUNDS } from '../../record/lock/rounds.ts';
import type { PersonId } from '../../record/person.ts';
import { packed } from '../../record/plan-code.ts';
import { documentOf } from '../../record/plan-document.ts';
import { PLAN_LIMITS } from '../../record/plan-error.ts';
import { decodePlan } from '../../record/plan-transfer.ts';
import type { ListCursor } from '../../record/set-store.ts';
import type { PersonStore, Store } from '../../record/store.ts';
import type { StoreError } from '../../record/store-error.ts';
import type { StoredSet } from '../../record/stored-set.ts';
import { linksBySet, originOf } from '../../record/table-sets.ts';
import { fail, ok, type Result } from '../../result.ts';
import { partPacker } from '../../run/part-packer.ts';
import type { OpenedFile, RecordFault, RecordServices } from '../record/record-services.ts';
import type { Problem } from '../services.ts';
import { nextTurn } from './next-turn.ts';
import { problemOf } from './problem-of.ts';

/** Sets that are read at a time. Chosen: some dozens with their curves are a few megabytes. */
const PAGE = 100;

/** A store that could not be read half-way through. */
class ReadingFailed extends Error {
  override readonly name = 'ReadingFailed';
  readonly error: StoreError;
  constructor(error: StoreError) {
    super(error.kind);
    this.error = error;
  }
}

/**
 * Somebody's sets page by page, without invented ones. The database reads the next page while one is in use.
 * @param onDone told how many of a page were used, and how many of it can't be read, once it was used
 */
async function* ownSets(
  store: PersonStore,
  isOwn: (set: StoredSet) => boolean,
  onDone: (readable: number, damaged: number) => void,
) {
  const ask = (after: ListCursor | null) => store.list({ limit: PAGE, ...(after ? { after } : {}) });
  let asked: ReturnType<PersonStore['list']> | null = ask(null);
  while (asked) {
    const page: Awaited<ReturnType<PersonStore['list']>> = await asked;
    if (!page.ok) throw new ReadingFailed(page.error);
    const next: ListCursor | null = page.value.next;
    asked = next && ask(next);
    const { sets, damaged } = page.value;
    yield sets.filter(isOwn);
    onDone(sets.length, damaged.length);
  }
}

const takeInFault = (error: TakeInError): Problem | RecordFault => {
  if (error.kind === 'record-elsewhere') return error;
  return error.kind === 'person-missing' ? { kind: error.kind } : problemOf(error);
};

/** A plan's file, as whoever is sent both may take the one for the other. */
function planIn(bytes: Uint8Array): OpenedFile | null {
  if (bytes.length > PLAN_LIMITS.fileCharacters) return null;
  const plan = decodePlan(new TextDecoder().decode(bytes));
  const code = plan.ok ? packed(JSON.stringify(documentOf(plan.value))) : plan;
  return code.ok ? { kind: 'plan', code: code.value } : null;
}

async function openFile(
  file: File,
  passphrase: string | null,
  onProgress: (share: number) => void = () => undefined,
): Promise<Result<OpenedFile, RecordFault>> {
  const { fileBytes: limit } = RECORD_LIMITS;
  if (file.size > limit) return fail({ kind: 'record-too-large', what: 'fileBytes', found: file.size, limit });
  let bytes: Uint8Array<ArrayBuffer>;
  try {
    bytes = new Uint8Array(await file.arrayBuffer());
  } catch {
    return fail({ kind: 'file-unreadable' });
  }
  const record = await readRecord(bytes, passphrase, crypto, (share) => {
    onProgress(share);
    return nextTurn();
  });
  if (record.ok) return ok({ kind: 'record', record: record.value });
  const plan = record.error.kind === 'not-a-record' ? planIn(bytes) : null;
  return plan ? ok(plan) : record;
}

/** @param person whose record is written */
export function recordServices(opening: Promise<Result<Store, StoreError>>, person: PersonId): RecordServices {
  const asked = async (
    call: (records: Awaited<ReturnType<Store['records']>>) => Promise<Result<Brought, TakeInError>>,
  ): Promise<Result<Brought, Problem | RecordFault>> => {
    const store = await opening;
    if (!store.ok) return fail(problemOf(store.error));
    const answer = await call(await store.value.records());
    return answer.ok ? answer : fail(takeInFault(answer.error));
  };
  return {
    async write({ name, affectedSide }, passphrase, onProgress = () => undefined) {
      const store = await opening;
      if (!store.ok) return fail(problemOf(store.error));
      const own = store.value.of(person);
      const records = await store.value.records();
      const ids = await records.idsOf(person);
      if (!ids.ok) return fail(problemOf(ids.error));
      const count = await records.setCount(person);
      if (!count.ok) return fail(problemOf(count.error));
      const diary = await own.diary.all();
      if (!diary.ok) return fail(problemOf(diary.error));
      const links = linksBySet(diary.value.entries);
      const entries = diary.value.entries.filter(({ origin }) => origin === 'own');
      let [sets, damaged, done] = [0, diary.value.damaged.length, 0];
      const isOwn = (set: StoredSet) => {
        const own = originOf(set, links.get(set.id) ?? null) === 'own';
        if (own) sets += 1;
        return own;
      };
      const packer = partPacker();
      try {
        const pages = ownSets(own, isOwn, (readable, unreadable) => {
          damaged += unreadable;
          done += readable + unreadable;
          // Behind the sets there is the diary and the sealing: about as long as a page more.
          if (count.value > PAGE) onProgress(done / (count.value + PAGE));
        });
        const whose = { ids: [...ids.value], name, affectedSide };
        const record = { createdAt: new Date().toISOString(), person: whose, diary: entries, pages };
        const bytes = await writeRecord(record, passphrase, crypto, ROUNDS, packer.pack);
        return ok({ file: new Blob([bytes], { type: 'application/zip' }), sets, entries: entries.length, damaged });
      } catch (cause) {
        if (cause instanceof ReadingFailed) return fail(problemOf(cause.error));
        throw cause;
      } finally {
        packer.end();
      }
    },
    open: openFile,
    async ownerOf({ manifest }) {
      const store = await opening;
      if (!store.ok) return fail(problemOf(store.error));
      const owner = await (await store.value.records()).ownerOf(manifest.person.ids);
      return owner.ok ? owner : fail(problemOf(owner.error));
    },
    looked: (into, record) => asked((records) => records.looked(into, record)),
    taken: (into, record, onProgress) => asked((records) => records.taken(into, record, onProgress)),
  };
}
