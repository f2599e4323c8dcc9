import { describe, expect, test } from 'vitest';
import { SELF } from '../../src/record/person.ts';
import type { RepEdit } from '../../src/record/rep-edit.ts';
import type { PersonStore } from '../../src/record/store.ts';
import type { StoredSet } from '../../src/record/stored-set.ts';
import { fail, ok } from '../../src/result.ts';
import { storedSets, type UnstoredSets } from '../../src/screens/adapter/stored-sets.ts';
import { aRep, aSet } from './fake-sets.ts';

/** A store over an array, newest first; only what the screens use of it. */
function arrayStore(sets: StoredSet[], damaged: readonly string[] = []): PersonStore {
  const find = (id: string) => sets.find((set) => set.id === id);
  return {
    begin: async () => ok(undefined),
    append: async () => ok(undefined),
    end: async () => ok(undefined),
    list: async ({ limit, after }) => {
      const from = after ? sets.findIndex(({ id }) => id === after.id) + 1 : 0;
      const page = sets.slice(from, from + limit);
      const last = page.at(-1);
      const next = last && from + limit < sets.length ? { startedAt: last.startedAt, id: last.id } : null;
      return ok({ sets: page, damaged: after ? [] : damaged.map((id) => ({ id, what: 'reps' })), next });
    },
    read: async (id) => {
      const set = find(id);
      return set ? ok(set) : fail({ kind: 'set-missing', id });
    },
    edit: async (edit: RepEdit) => {
      const i = sets.findIndex(({ id }) => id === edit.setId);
      const set = sets[i];
      if (!set) return fail({ kind: 'set-missing', id: edit.setId });
      sets[i] = { ...set, edits: [...set.edits, edit] };
      return ok(undefined);
    },
    remove: async (id) => {
      const i = sets.findIndex((set) => set.id === id);
      if (i < 0) return fail({ kind: 'set-missing', id });
      sets.splice(i, 1);
      return ok(undefined);
    },
    diary: { add: async (entries: readonly unknown[]) => ok(entries.length) } as unknown as PersonStore['diary'],
  };
}

const stored = (n: number): StoredSet => aSet([aRep(1)], { id: `set-${n}` });

describe('the stored sets behind the screens', () => {
  test('all pages are read, and what is damaged is counted', async () => {
    const sets = Array.from({ length: 250 }, (_, i) => stored(i));
    const found = await storedSets(Promise.resolve(ok(arrayStore(sets, ['broken']))), new Map(), SELF).sets();
    expect(found.ok && found.value.sets.map(({ id }) => id)).toEqual(sets.map(({ id }) => id));
    expect(found.ok && found.value.damaged).toBe(1);
  });

  test('somebody else’s set is as good as missing, and stays', async () => {
    const sets = [stored(1)];
    const other = storedSets(Promise.resolve(ok(arrayStore(sets))), new Map(), '00000000-0000-4000-8000-000000000001');
    expect(await other.set('set-1')).toMatchObject({ ok: false, error: { kind: 'set-missing' } });
    expect(await other.change('set-1', { kind: 'add' })).toMatchObject({ ok: false, error: { kind: 'set-missing' } });
    expect(await other.remove('set-1')).toMatchObject({ ok: false, error: { kind: 'set-missing' } });
    expect(sets).toEqual([stored(1)]);
  });

  test('a change is stored as an edit of its own, and the set comes back with it', async () => {
    const sets = [stored(1)];
    const services = storedSets(Promise.resolve(ok(arrayStore(sets))), new Map(), SELF);
    const changed = await services.change('set-1', { kind: 'strike', rep: { kind: 'measured', number: 1 } });
    expect(changed.ok && changed.value.edits.map(({ kind, setId }) => [kind, setId])).toEqual([['strike', 'set-1']]);
    expect(sets[0]?.reps).toEqual([aRep(1)]);
  });

  test('a set that the disk does not have is shown from the page, as such', async () => {
    const memory: UnstoredSets = new Map();
    memory.set('set-9', { set: stored(9), link: [] });
    const closed = storedSets(Promise.resolve(fail({ kind: 'store-unavailable', detail: 'private window' })), memory, SELF);
    const set = await closed.set('set-9');
    expect(set.ok && set.value.onDisk).toBe(false);
    expect(await closed.set('set-1')).toEqual(fail({ kind: 'store-unavailable' }));
    const changed = await closed.change('set-9', { kind: 'add' });
    expect(changed.ok && [changed.value.onDisk, changed.value.edits.length]).toEqual([false, 1]);
    expect(await closed.store('set-9')).toEqual(fail({ kind: 'store-unavailable' }));
    const file = await closed.fileOf('set-9');
    expect(file.ok).toBe(true);
  });

  test('a removed set is gone, from the page or from the disk', async () => {
    const memory: UnstoredSets = new Map();
    memory.set('set-9', { set: stored(9), link: [] });
    const services = storedSets(Promise.resolve(ok(arrayStore([stored(1)]))), memory, SELF);
    await services.remove('set-9');
    await services.remove('set-1');
    expect((await services.set('set-9')).ok).toBe(false);
    expect((await services.set('set-1')).ok).toBe(false);
  });
});
