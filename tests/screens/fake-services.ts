import { createStore } from 'zustand/vanilla';
import { personFacts } from '../../src/dose/person-facts.ts';
import type { DiaryEntry } from '../../src/record/diary-entry.ts';
import { doseLogOf } from '../../src/record/dose-log-of.ts';
import type { Person } from '../../src/record/person.ts';
import type { RepEdit } from '../../src/record/rep-edit.ts';
import type { StoredSet } from '../../src/record/stored-set.ts';
import { fail, ok, type Result } from '../../src/result.ts';
import type { LockServices, ShownLock } from '../../src/screens/lock/lock-services.ts';
import type { AppServices, Problem, SetHooks, SetPlan, ShownSet } from '../../src/screens/services.ts';
import { byMoment } from '../../src/symptoms/entry.ts';

/** A set that the test drives: it calls the hooks and ends it. */
export interface DrivenSet {
  readonly plan: SetPlan;
  readonly hooks: SetHooks;
  readonly end: (outcome: Result<StoredSet | null, Problem>) => Promise<void>;
  stopped: boolean;
  /** How often symptoms were said to begin. */
  onsets: number;
  wentOn: number;
}

/** The screens' services over an array of sets; every set that is begun is put into `begun`. */
export function fakeServices(stored: readonly ShownSet[] = [], change: Partial<AppServices> = {}) {
  const sets = new Map(stored.map((set) => [set.id, set]));
  const begun: DrivenSet[] = [];
  const entries: DiaryEntry[] = [];
  const told: { state: NotificationPermission | 'unsupported'; readonly shown: string[] } = { state: 'default', shown: [] };
  const people = new Map<string, Person>();
  let edits = 0;
  const lock = fakeLock();
  const services: AppServices = {
    missing: () => [],
    limits: () => [],
    cameras: async () => [],
    shareWindow: async () => fail({ kind: 'window-denied' }),
    sets: async () => ok({ sets: [...sets.values()], damaged: 0 }),
    set: async (id) => {
      const set = sets.get(id);
      return set ? ok(set) : fail({ kind: 'set-missing' });
    },
    change: async (id, wish) => {
      const set = sets.get(id);
      if (!set) return fail({ kind: 'set-missing' });
      edits += 1;
      const edit: RepEdit = { id: `edit-${edits}`, schema: 1, setId: id, at: '2026-03-01T10:05:00.000Z', ...wish };
      const changed = { ...set, edits: [...set.edits, edit] };
      sets.set(id, changed);
      return ok(changed);
    },
    remove: async (id) => {
      sets.delete(id);
      return ok(null);
    },
    store: async (id) => {
      const set = sets.get(id);
      if (!set) return fail({ kind: 'set-missing' });
      sets.set(id, { ...set, onDisk: true });
      return ok({ ...set, onDisk: true });
    },
    fileOf: async () => ok(new Blob(['a record'])),
    visitOnly: async () => false,
    runSet: (plan, hooks) => {
      let finish: (outcome: Result<StoredSet | null, Problem>) => void = () => undefined;
      const done = new Promise<Result<StoredSet | null, Problem>>((resolve) => {
        finish = resolve;
      });
      const driven: DrivenSet = {
        plan,
        hooks,
        stopped: false,
        onsets: 0,
        wentOn: 0,
        end: async (outcome) => {
          finish(outcome);
          await done;
          await Promise.resolve();
        },
      };
      begun.push(driven);
      return {
        done,
        stop: () => {
          driven.stopped = true;
        },
        goOn: () => {
          driven.wentOn += 1;
        },
        markOnset: () => {
          driven.onsets += 1;
        },
      };
    },
    lookAtStickers: async () => ({
      find: async () => fail({ kind: 'too-few', count: 0, needed: 3 }),
      learn: async () => fail({ kind: 'too-small', diameterPx: 0, neededPx: 5 }),
      tapSkin: async () => ok(null),
      watch: async () => undefined,
      showAt: () => undefined,
      stop: () => undefined,
    }),
    still: {
      openFilm: async () => fail({ kind: 'file-damaged' }),
      photo: async () => fail({ kind: 'photo-unreadable' }),
    },
    diary: {
      log: async () => ok(doseLogOf(entries, [...sets.values()], 'UTC')),
      add: async (added) => {
        entries.push(...added);
        return ok(null);
      },
      removeExamples: async () => {
        entries.splice(0, entries.length, ...entries.filter((entry) => entry.origin === 'own'));
        return ok(null);
      },
    },
    everything: async () =>
      ok({ sets: [...sets.values()].map(({ onDisk: _, ...set }) => set), diary: entries.toSorted(byMoment), damaged: [] }),
    messages: {
      state: () => told.state,
      ask: async () => {
        told.state = 'granted';
        return told.state;
      },
      show: (text) => told.shown.push(text),
    },
    lock,
    busy: () => false,
    here: {
      rows: async () =>
        ok({
          sets: { count: sets.size, bytes: 1000 },
          diary: { count: entries.length, bytes: 0 },
          people: { count: people.size, bytes: 0 },
        }),
      program: async () => ({ site: 0, models: [] }),
      room: async () => null,
      persistence: async () => 'not-kept',
      askToKeep: async () => 'kept',
    },
    people: {
      list: async () => ok({ people: [...people.values()].map((person) => ({ person, facts: null })), damaged: [] }),
      read: async (id) => {
        const person = people.get(id);
        return person ? ok(person) : fail({ kind: 'person-missing' });
      },
      save: async (person) => {
        people.set(person.id, person);
        return ok(null);
      },
      facts: async () => ok(personFacts(doseLogOf(entries, [...sets.values()], 'UTC'))),
      remove: async (id) => {
        people.delete(id);
        return ok(null);
      },
    },
    onStored: () => () => undefined,
    server: async () => {
      throw new Error('server requires a page that knows one, got none');
    },
    records: async () => {
      throw new Error('these screens ask for no record file');
    },
    of: () => services,
    ...change,
  };
  return { services, begun, sets, entries, told, people };
}

/** A lock that takes every passphrase but "wrong". */
export function fakeLock(begin: ShownLock = 'off'): LockServices & { readonly asked: string[] } {
  const state = createStore<ShownLock>(() => begin);
  const asked: string[] = [];
  const to = (next: ShownLock, what: string) => async (passphrase?: unknown) => {
    asked.push(typeof passphrase === 'string' ? `${what} ${passphrase}` : what);
    if (passphrase === 'wrong') return fail({ kind: 'lock-wrong' } as const);
    state.setState(next, true);
    return ok(null);
  };
  return {
    state,
    asked,
    unlock: to('open', 'unlock'),
    turnOn: to('open', 'turnOn'),
    turnOff: to('off', 'turnOff'),
    finish: to('open', 'finish'),
    change: async (old, next) => to('open', `change ${old} to`)(old === 'wrong' ? old : next),
    lockNow: () => void to('locked', 'lockNow')(),
    erase: to('locked', 'erase'),
    keepOpen: () => () => undefined,
  };
}
