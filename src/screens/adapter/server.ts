import { createStore, type StoreApi } from 'zustand/vanilla';
import { version } from '../../../package.json';
import { DEFAULT_NAMING } from '../../fhir/naming.ts';
import type { TakeInError } from '../../record/file/record-store.ts';
import { type PersonId, SELF } from '../../record/person.ts';
import type { Store } from '../../record/store.ts';
import type { StoreError } from '../../record/store-error.ts';
import type { Connection, SyncStore } from '../../record/sync/sync-store.ts';
import { fail, ok, type Result } from '../../result.ts';
import { OPEN } from '../../sync/access.ts';
import { fhirServer } from '../../sync/fhir-server.ts';
import type { Surroundings } from '../../sync/http.ts';
import { onceMore } from '../../sync/once-more.ts';
import { type Sent, sendWaiting } from '../../sync/send-waiting.ts';
import type { ServerError } from '../../sync/server-error.ts';
import { takeInNew } from '../../sync/take-in-new.ts';
import type { ShownLock } from '../lock/lock-services.ts';
import type { KnownServer } from '../server/known-server.ts';
import type { AutomaticState, ServerFault, ServerServices, TakenForAll } from '../server/server-services.ts';
import type { Problem } from '../services.ts';
import { problemOf } from './problem-of.ts';
import { around, aroundSets, faultOf, isSetRunning } from './server-around.ts';
import { createSignIn, roleOf, type SignIn } from './sign-in.ts';

/** Held by the one tab that sends or takes in. */
const LOCK = 'evenside-server';
const alone = <T>(call: () => Promise<T>): Promise<T> => navigator.locks.request(LOCK, call);

export interface ServerNeeds {
  readonly opening: Promise<Result<Store, StoreError>>;
  readonly lock: StoreApi<ShownLock>;
  /** Whether a set runs, or was measured and is in this page alone. */
  readonly busy: () => boolean;
}

/** Whether what went wrong with one person will go wrong with the next, too. */
const isForAll = (fault: Problem | ServerFault): boolean =>
  fault.kind === 'server' &&
  ['unreachable', 'signed-out', 'not-allowed', 'busy', 'failed', 'not-fhir'].includes(fault.error.kind);

/** One for the page: what was brought back from signing in is exchanged once. */
let here: SignIn | null = null;
function signInAt(known: KnownServer, { opening, lock }: ServerNeeds): SignIn | null {
  const { clientId } = known;
  if (clientId !== null) here ??= createSignIn({ ...known, clientId }, { opening, lock, http: around.http });
  return here;
}

/** @param known the server that the page knows */
export function serverServices(person: PersonId, known: KnownServer, needs: ServerNeeds): ServerServices {
  const { base } = known;
  const { opening, busy } = needs;
  const signIn = signInAt(known, needs);
  const role = roleOf(person);
  const session = signIn?.session(role) ?? null;
  const serverOver = (surroundings: Surroundings, whose: PersonId = person) =>
    fhirServer(surroundings, base, signIn?.session(roleOf(whose)) ?? OPEN);
  const automatic = createStore<AutomaticState>(() => ({ working: false, fault: null, failures: 0, sent: null }));

  async function withSync<T>(
    call: (sync: SyncStore, store: Store) => Promise<Result<T, Problem | ServerFault>>,
  ): Promise<Result<T, Problem | ServerFault>> {
    const store = await opening;
    return store.ok ? call(await store.value.sync(), store.value) : fail(problemOf(store.error));
  }

  /** Of another server than the page's, a connection counts for nothing. */
  async function connected(sync: SyncStore, whose: PersonId = person): Promise<Result<Connection | null, StoreError>> {
    const found = await sync.connection(whose);
    return found.ok && found.value?.server !== base ? ok(null) : found;
  }

  /** One tab at a time, with how far the one before it came. */
  const withConnection = <T>(
    call: (connection: Connection, sync: SyncStore, store: Store) => Promise<Result<T, ServerError | StoreError | TakeInError>>,
    whose: PersonId = person,
  ) =>
    alone(() =>
      withSync<T>(async (sync, store) => {
        const connection = await connected(sync, whose);
        if (!connection.ok) return fail(problemOf(connection.error));
        if (!connection.value) return fail({ kind: 'server', error: { kind: 'not-there' } });
        const done = await call(connection.value, sync, store);
        return done.ok ? done : fail(faultOf(done.error));
      }),
    );

  const save = (sync: SyncStore, patient: string) =>
    sync.save({ person, server: base, patient, cursor: null, sentAt: null, takenAt: null });

  /** A patient who signed in is connected as whom the server named. Who is connected as somebody else is signed out again. */
  async function joined(sync: SyncStore, connection: Connection | null): Promise<Result<Connection | null, StoreError>> {
    const patient = role === 'patient' ? session?.tokens()?.patient : null;
    if (!patient || connection?.patient === `Patient/${patient}`) return ok(connection);
    if (connection) {
      await session?.end();
      signIn?.blame({ kind: 'somebody-else' });
      return ok(connection);
    }
    const saved = await save(sync, `Patient/${patient}`);
    return saved.ok ? connected(sync) : saved;
  }

  const sent = (surroundings: Surroundings): Promise<Result<Sent, Problem | ServerFault>> =>
    withConnection(async (connection, sync, store) => {
      const diary = async () => {
        const all = await store.of(person).diary.all();
        return all.ok ? ok(all.value.entries) : all;
      };
      const context = { naming: DEFAULT_NAMING, version, texts: true };
      const server = serverOver(surroundings);
      const done = await sendWaiting({ around: surroundings, server, store: sync, connection, diary, context });
      if (!done.ok) return done;
      const saved = await sync.save({ ...connection, sentAt: new Date().toISOString() });
      return saved.ok ? done : saved;
    });

  const taken = (whose: PersonId, surroundings: Surroundings) =>
    withConnection(
      async (connection, sync, store) =>
        takeInNew({
          around: surroundings,
          server: serverOver(surroundings, whose),
          store: sync,
          records: await store.records(),
          sets: store,
          naming: DEFAULT_NAMING,
          connection,
        }),
      whose,
    );

  const state: ServerServices['state'] = async () => {
    const store = await opening;
    if (!store.ok) return fail(problemOf(store.error));
    const sync = await store.value.sync();
    await signIn?.settled();
    const known = await connected(sync);
    if (!known.ok) return fail(problemOf(known.error));
    const connection = await joined(sync, known.value);
    if (!connection.ok) return fail(problemOf(connection.error));
    const [waiting, choice] = [await sync.waiting(person, 0), await sync.choice(person, base)];
    if (!waiting.ok) return fail(problemOf(waiting.error));
    if (!choice.ok) return fail(problemOf(choice.error));
    return ok({
      connection: connection.value,
      waiting: waiting.value.ids.size,
      signIn: session ? ((await session.isIn()) ? 'in' : 'out') : 'none',
      automatic: choice.value.automatic,
      returned: (await signIn?.settled()) ?? null,
    });
  };

  const calm = () => automatic.setState({ fault: null, failures: 0 });
  const sendByItself = onceMore(async () => {
    if (busy() || !navigator.onLine || (await isSetRunning())) return;
    const store = await opening;
    // Looked at first: to count what waits is more work.
    const choice = store.ok ? await (await store.value.sync()).choice(person, base) : store;
    if (choice.ok && !choice.value.automatic) return calm();
    const now = await state();
    if (!now.ok) return automatic.setState({ fault: now.error });
    const { connection, waiting, signIn: signedIn } = now.value;
    if (!connection || waiting === 0) return calm();
    if (signedIn === 'out') return automatic.setState({ fault: { kind: 'server', error: { kind: 'signed-out' } } });
    automatic.setState({ working: true });
    const done = await sent(aroundSets);
    automatic.setState(({ failures, sent: before }) => ({
      working: false,
      fault: done.ok ? null : done.error,
      failures: done.ok ? 0 : failures + 1,
      sent: done.ok ? done.value : before,
    }));
  });

  return {
    state,
    automatic,
    sendByItself,
    signIn: async (keep) => {
      if (!signIn) throw new Error('signIn requires a server with sign-in, got an open one');
      const gone = await signIn.go(role, keep);
      return gone.ok ? gone : fail({ kind: 'sign-in', error: gone.error });
    },
    signOut: async () => (await session?.end()) ?? null,
    connect: (id) =>
      withSync(async (sync) => {
        const found = await serverOver(around).get(`${base}/Patient/${encodeURIComponent(id)}`);
        if (!found.ok) return fail({ kind: 'server', error: found.error });
        if (found.value.resourceType !== 'Patient' || found.value.id !== id)
          return fail({ kind: 'server', error: { kind: 'not-fhir' } });
        const saved = await save(sync, `Patient/${id}`);
        return saved.ok ? ok(null) : fail(problemOf(saved.error));
      }),
    async disconnect() {
      const store = await opening;
      if (!store.ok) return fail(problemOf(store.error));
      // A therapist stays signed in for the others.
      if (role === 'patient') {
        await session?.end();
        signIn?.blame(null);
      }
      const gone = await (await store.value.sync()).disconnect(person);
      automatic.setState({ fault: null, failures: 0, sent: null });
      return gone.ok ? ok(null) : fail(problemOf(gone.error));
    },
    async choose(wanted) {
      const store = await opening;
      if (!store.ok) return fail(problemOf(store.error));
      const chosen = await (await store.value.sync()).choose(person, base, { automatic: wanted });
      calm();
      return chosen.ok ? ok(null) : fail(problemOf(chosen.error));
    },
    send: () => sent(around),
    takeIn: () => taken(person, around),
    async takeInForAll() {
      const all: { people: number; fresh: number; grown: number; failed: TakenForAll['failed'][number][] } = {
        people: 0,
        fresh: 0,
        grown: 0,
        failed: [],
      };
      const store = await opening;
      if (!store.ok || !navigator.onLine) return all;
      const choices = await (await store.value.sync()).choices(base);
      for (const choice of choices.ok ? choices.value : []) {
        if (!choice.automatic || choice.person === SELF) continue;
        const found = await taken(choice.person, aroundSets);
        all.people += 1;
        if (found.ok) {
          all.fresh += found.value.fresh;
          all.grown += found.value.grown;
          continue;
        }
        all.failed.push({ person: choice.person, fault: found.error });
        if (isForAll(found.error)) break;
      }
      return all;
    },
  };
}
