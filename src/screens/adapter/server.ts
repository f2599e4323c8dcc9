import { version } from '../../../package.json';
import { DEFAULT_NAMING } from '../../fhir/naming.ts';
import type { TakeInError } from '../../record/file/record-store.ts';
import { newId } from '../../record/new-id.ts';
import type { PersonId } from '../../record/person.ts';
import type { Store } from '../../record/store.ts';
import type { StoreError } from '../../record/store-error.ts';
import type { Connection, SyncStore } from '../../record/sync/sync-store.ts';
import { fail, ok, type Result } from '../../result.ts';
import { fhirServer } from '../../sync/fhir-server.ts';
import type { Surroundings } from '../../sync/http.ts';
import { sendWaiting } from '../../sync/send-waiting.ts';
import type { ServerError } from '../../sync/server-error.ts';
import { takeInNew } from '../../sync/take-in-new.ts';
import type { ServerFault, ServerServices } from '../server/server-services.ts';
import type { Problem } from '../services.ts';
import { problemOf } from './problem-of.ts';

const SERVER_KINDS = {
  unreachable: true,
  'not-allowed': true,
  busy: true,
  'at-once': true,
  condition: true,
  failed: true,
  'too-large': true,
  'not-there': true,
  refused: true,
  'not-fhir': true,
} as const satisfies Readonly<Record<ServerError['kind'], true>>;

const isServerError = (error: ServerError | StoreError | TakeInError): error is ServerError => error.kind in SERVER_KINDS;

function faultOf(error: ServerError | StoreError | TakeInError): Problem | ServerFault {
  if (isServerError(error)) return { kind: 'server', error };
  if (error.kind === 'record-elsewhere') return { kind: 'elsewhere' };
  return error.kind === 'person-missing' ? { kind: error.kind } : problemOf(error);
}

const around: Surroundings = {
  // No cookies, no stored copies, and no way on to another address.
  http: (url, request) => fetch(url, { ...request, credentials: 'omit', cache: 'no-store', redirect: 'error' }),
  nowMs: Date.now,
  chance: Math.random,
  wait: (ms) => new Promise((resolve) => setTimeout(resolve, ms)),
  newId,
};

/** @param base address of the server that the page knows */
export function serverServices(opening: Promise<Result<Store, StoreError>>, person: PersonId, base: string): ServerServices {
  const server = fhirServer(around, base, async () => null);

  async function withSync<T>(
    call: (sync: SyncStore, store: Store) => Promise<Result<T, Problem | ServerFault>>,
  ): Promise<Result<T, Problem | ServerFault>> {
    const store = await opening;
    return store.ok ? call(await store.value.sync(), store.value) : fail(problemOf(store.error));
  }

  /** Of another server than the page's, a connection counts for nothing. */
  async function connected(sync: SyncStore): Promise<Result<Connection | null, StoreError>> {
    const found = await sync.connection(person);
    return found.ok && found.value?.server !== base ? ok(null) : found;
  }

  const withConnection = <T>(
    call: (connection: Connection, sync: SyncStore, store: Store) => Promise<Result<T, ServerError | StoreError | TakeInError>>,
  ) =>
    withSync<T>(async (sync, store) => {
      const connection = await connected(sync);
      if (!connection.ok) return fail(problemOf(connection.error));
      if (!connection.value) throw new Error('withConnection requires a connected person, got none');
      const done = await call(connection.value, sync, store);
      return done.ok ? done : fail(faultOf(done.error));
    });

  return {
    async state() {
      const store = await opening;
      if (!store.ok) return fail(problemOf(store.error));
      const sync = await store.value.sync();
      const connection = await connected(sync);
      if (!connection.ok) return fail(problemOf(connection.error));
      const waiting = await sync.waiting(person, 0);
      return waiting.ok ? ok({ connection: connection.value, waiting: waiting.value.ids.size }) : fail(problemOf(waiting.error));
    },
    connect: (id) =>
      withSync(async (sync) => {
        const patient = `Patient/${id}`;
        const found = await server.get(`${base}/Patient/${encodeURIComponent(id)}`);
        if (!found.ok) return fail({ kind: 'server', error: found.error });
        if (found.value.resourceType !== 'Patient' || found.value.id !== id)
          return fail({ kind: 'server', error: { kind: 'not-fhir' } });
        const saved = await sync.save({ person, server: base, patient, cursor: null, sentAt: null, takenAt: null });
        return saved.ok ? ok(null) : fail(problemOf(saved.error));
      }),
    async disconnect() {
      const store = await opening;
      if (!store.ok) return fail(problemOf(store.error));
      const gone = await (await store.value.sync()).disconnect(person);
      return gone.ok ? ok(null) : fail(problemOf(gone.error));
    },
    send: () =>
      withConnection(async (connection, sync, store) => {
        const diary = async () => {
          const all = await store.of(person).diary.all();
          return all.ok ? ok(all.value.entries) : all;
        };
        const context = { naming: DEFAULT_NAMING, version, texts: true };
        const sent = await sendWaiting({ around, server, store: sync, connection, diary, context });
        if (!sent.ok) return sent;
        const saved = await sync.save({ ...connection, sentAt: new Date().toISOString() });
        return saved.ok ? sent : saved;
      }),
    takeIn: () =>
      withConnection(async (connection, sync, store) =>
        takeInNew({
          around,
          server,
          store: sync,
          records: await store.records(),
          sets: store,
          naming: DEFAULT_NAMING,
          connection,
        }),
      ),
  };
}
