import type { StoreApi } from 'zustand/vanilla';
import type { PersonId } from '../../record/person.ts';
import { SELF } from '../../record/person.ts';
import type { Store } from '../../record/store.ts';
import type { StoreError } from '../../record/store-error.ts';
import { fail, ok, type Result } from '../../result.ts';
import type { Http } from '../../sync/http.ts';
import { challengeOf, newSecret, redeem, type TokenFetch, type TokenRequests } from '../../sync/sign-in/oauth.ts';
import { addressOf, isAnswerTo, type Question } from '../../sync/sign-in/question.ts';
import type { Role } from '../../sync/sign-in/scopes.ts';
import { createSession, type KeptToken, type Session } from '../../sync/sign-in/session.ts';
import type { SignInError } from '../../sync/sign-in/sign-in-error.ts';
import { readSmartServer, type SmartServer } from '../../sync/sign-in/smart-server.ts';
import type { ShownLock } from '../lock/lock-services.ts';
import type { KnownServer } from '../server/known-server.ts';
import { QUESTION_KEY, takeReturn } from '../server/sign-in-return.ts';

/** So long a request for tokens may take, ms. Chosen. */
const PATIENCE_MS = 30_000;
/** Held while a token is changed for a new one. */
const LOCK = 'evenside-sign-in';

/** Who is signed in at the page's server. */
export interface SignIn {
  readonly session: (role: Role) => Session;
  /** Sends the person to the server's own page. @param keep to stay signed in on this machine */
  readonly go: (role: Role, keep: boolean) => Promise<Result<null, SignInError>>;
  /** Comes once what was brought back is exchanged: why nobody is signed in by it; null: all is well. */
  readonly settled: () => Promise<SignInError | null>;
  /** Says why nobody is signed in after all; null: that is over. */
  readonly blame: (error: SignInError | null) => void;
}

export interface SignInNeeds {
  readonly opening: Promise<Result<Store, StoreError>>;
  readonly lock: StoreApi<ShownLock>;
  readonly http: Http;
}

const ROLES: readonly Role[] = ['patient', 'therapist'];
export const roleOf = (person: PersonId): Role => (person === SELF ? 'patient' : 'therapist');

const tokenFetch: TokenFetch = (url, { body, headers, method }) =>
  fetch(url, {
    body,
    headers,
    method,
    credentials: 'omit',
    cache: 'no-store',
    redirect: 'error',
    signal: AbortSignal.timeout(PATIENCE_MS),
  });

/** What is stored can be read and written only once it is unlocked. */
const unlocked = (lock: StoreApi<ShownLock>): Promise<void> =>
  new Promise((resolve) => {
    const isOpen = (state: ShownLock) => !['opening', 'locked', 'erased'].includes(state);
    if (isOpen(lock.getState())) return resolve();
    const stop = lock.subscribe((state) => {
      if (!isOpen(state)) return;
      stop();
      resolve();
    });
  });

/** In the database, where the passphrase lock seals it; of a patient alone, since a therapist's machine is shared. */
function keptToken({ opening, lock }: SignInNeeds, base: string): KeptToken {
  const sync = async () => {
    await unlocked(lock);
    const store = await opening;
    return store.ok ? store.value.sync() : null;
  };
  return {
    read: async () => {
      const found = await (await sync())?.choice(SELF, base);
      return found?.ok ? found.value.refreshToken : null;
    },
    // One that can't be written is gone with the page; nothing else depends on it.
    write: async (refreshToken) => void (await (await sync())?.choose(SELF, base, { refreshToken })),
  };
}

const NOT_KEPT: KeptToken = { read: async () => null, write: async () => undefined };

const TEXTS = ['base', 'clientId', 'role', 'redirectUri', 'state', 'verifier', 'back'] as const;

/** The question that was kept; null: none, or not one of this page's. */
function questionOf(kept: string | null, known: KnownServer): Question | null {
  try {
    const found = JSON.parse(kept ?? '') as Readonly<Record<string, unknown>>;
    const isWhole = TEXTS.every((name) => typeof found[name] === 'string') && typeof found.askedAtMs === 'number';
    const isOurs = found.base === known.base && found.clientId === known.clientId && ROLES.some((role) => role === found.role);
    return isWhole && isOurs ? (found as unknown as Question) : null;
  } catch {
    return null;
  }
}

/** @param known a server with sign-in */
export function createSignIn(known: KnownServer & { readonly clientId: string }, needs: SignInNeeds): SignIn {
  const { base, clientId } = known;
  let reading: Promise<Result<SmartServer, SignInError>> | null = null;
  const smart = async (): Promise<Result<SmartServer, SignInError>> => {
    reading ??= readSmartServer(needs.http, base, known.signIn);
    const found = await reading;
    if (!found.ok) reading = null;
    return found;
  };
  const requests = async (): Promise<Result<TokenRequests, SignInError>> => {
    const server = await smart();
    return server.ok ? ok({ server: server.value, clientId, fetch: tokenFetch, nowMs: Date.now }) : server;
  };
  const sessionOf = (role: Role): Session =>
    createSession({
      requests,
      kept: role === 'patient' ? keptToken(needs, base) : NOT_KEPT,
      alone: (call) => navigator.locks.request(LOCK, call),
      nowMs: Date.now,
    });
  const sessions: Readonly<Record<Role, Session>> = { patient: sessionOf('patient'), therapist: sessionOf('therapist') };

  /** Changes what was brought back into tokens. */
  const exchanged = async (): Promise<SignInError | null> => {
    const brought = takeReturn();
    if (!brought) return null;
    const question = questionOf(brought.question, known);
    if (!question || !isAnswerTo(question, brought.answer, Date.now())) return { kind: 'not-asked' };
    const where = await requests();
    if (!where.ok) return where.error;
    const tokens = await redeem(where.value, question, brought.answer);
    if (!tokens.ok) return tokens.error;
    if (question.role === 'patient' && tokens.value.patient === null) return { kind: 'no-patient' };
    await sessions[question.role].begin(tokens.value, question.keep);
    return null;
  };
  let trouble: SignInError | null = null;
  const exchanging = exchanged().then((error) => {
    trouble = error;
  });

  return {
    session: (role) => sessions[role],
    async go(role, keep) {
      const server = await smart();
      if (!server.ok) return server;
      const question: Question = {
        base,
        clientId,
        role,
        keep,
        // The site's own folder, whichever screen is open: it is registered with the server to the letter.
        redirectUri: new URL('./', document.baseURI).href,
        state: newSecret(),
        verifier: newSecret(),
        askedAtMs: Date.now(),
        back: location.hash,
      };
      const address = addressOf(server.value, question, await challengeOf(question.verifier));
      try {
        sessionStorage.setItem(QUESTION_KEY, JSON.stringify(question));
      } catch {
        return fail({ kind: 'not-asked' });
      }
      location.assign(address);
      return ok(null);
    },
    async settled() {
      await exchanging;
      return trouble;
    },
    blame(error) {
      trouble = error;
    },
  };
}
