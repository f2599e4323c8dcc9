import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { openSetStore } from '../../src/record/open-store.ts';
import { editedCount } from '../../src/record/rep-edit.ts';
import type { Store } from '../../src/record/store.ts';
import type { StoredSet } from '../../src/record/stored-set.ts';
import { type FakePage, fakeBrowser } from './fake-browser.ts';
import { edit, header, idOf, momentOf, removedAt, rep, result } from './set-builders.ts';
import { wentWell } from './went-well.ts';

const storeOf = async (page: FakePage): Promise<Store> => wentWell(await openSetStore(page));
const fresh = () => storeOf(fakeBrowser().page());

describe('a set while it runs', () => {
  test('is stored as running with the repetitions so far', async () => {
    const store = await fresh();
    wentWell(await store.begin(header()));
    wentWell(await store.append(header(), [rep(1)]));
    wentWell(await store.append(header(), [rep(2, { complete: false, flags: ['partial'] })]));
    expect(wentWell(await store.read(idOf(1)))).toEqual({
      ...header(),
      state: 'running',
      reps: [rep(1), rep(2, { complete: false, flags: ['partial'] })],
      result: null,
      edits: [],
    } satisfies StoredSet);
  });

  test('repetitions come back in their order beyond nine', async () => {
    const store = await fresh();
    const reps = Array.from({ length: 12 }, (_, i) => rep(i + 1));
    wentWell(await store.begin(header()));
    for (const each of reps.toReversed()) wentWell(await store.append(header(), [each]));
    expect(wentWell(await store.read(idOf(1))).reps).toEqual(reps);
  });

  test('a repetition written twice is there once', async () => {
    const store = await fresh();
    wentWell(await store.begin(header()));
    wentWell(await store.append(header(), [rep(1)]));
    wentWell(await store.append(header(), [rep(1)]));
    expect(wentWell(await store.read(idOf(1))).reps).toEqual([rep(1)]);
  });

  test('is neither edited nor removed', async () => {
    const store = await fresh();
    wentWell(await store.begin(header()));
    const running = { ok: false, error: { kind: 'set-running', id: idOf(1) } };
    expect(await store.edit(edit({ kind: 'add' }))).toEqual(running);
    expect(await store.remove(idOf(1), removedAt)).toEqual(running);
  });

  test('the same set does not run twice', async () => {
    const browser = fakeBrowser();
    const [one, other] = [await storeOf(browser.page()), await storeOf(browser.page())];
    wentWell(await one.begin(header()));
    await expect(other.begin(header())).rejects.toThrow('begin requires a set that runs nowhere else');
  });
});

describe('a page that closes', () => {
  test('at any point loses nothing that was appended, and leaves a finished set finished', async () => {
    const steps = fc.record({ reps: fc.integer({ min: 0, max: 6 }), ended: fc.boolean(), crash: fc.boolean() });
    await fc.assert(
      fc.asyncProperty(steps, async ({ reps, ended, crash }) => {
        const browser = fakeBrowser();
        const page = browser.page();
        const store = await storeOf(page);
        wentWell(await store.begin(header()));
        const appended = Array.from({ length: reps }, (_, i) => rep(i + 1));
        for (const each of appended) wentWell(await store.append(header(), [each]));
        if (ended) wentWell(await store.end(header(), { state: 'finished', result: result(appended) }));
        if (crash) page.crash();
        else store.close();

        const after = wentWell(await (await storeOf(browser.page())).read(idOf(1)));
        expect(after.reps).toEqual(appended);
        expect(after.state).toBe(ended ? 'finished' : 'interrupted');
        expect(after.result).toEqual(ended ? result(appended) : null);
      }),
      { numRuns: 30 },
    );
  });

  test('does not touch the set that still runs in another tab', async () => {
    const browser = fakeBrowser();
    const [here, there] = [browser.page(), browser.page()];
    const [mine, other] = [await storeOf(here), await storeOf(there)];
    wentWell(await mine.begin(header({ id: idOf(1) })));
    wentWell(await other.begin(header({ id: idOf(2), startedAt: momentOf(1) })));
    here.crash();
    const { sets } = wentWell(await (await storeOf(browser.page())).list({ limit: 9 }));
    expect(sets.map(({ id, state }) => [id, state])).toEqual([
      [idOf(2), 'running'],
      [idOf(1), 'interrupted'],
    ]);
    wentWell(await other.append(header({ id: idOf(2), startedAt: momentOf(1) }), [rep(1)]));
    expect(wentWell(await other.read(idOf(2))).reps).toEqual([rep(1)]);
  });

  test('and opens again at once, as when it is reloaded, is waited for', async () => {
    const browser = fakeBrowser();
    const here = browser.page();
    const store = await storeOf(here);
    wentWell(await store.begin(header()));
    const reloaded = storeOf(browser.page());
    setTimeout(here.crash, 20);
    expect(wentWell(await (await reloaded).read(idOf(1))).state).toBe('interrupted');
  });

  test('is noticed by a page that was open before', async () => {
    const browser = fakeBrowser();
    const here = browser.page();
    const [mine, watching] = [await storeOf(here), await storeOf(browser.page())];
    wentWell(await mine.begin(header()));
    expect(wentWell(await watching.read(idOf(1))).state).toBe('running');
    here.crash();
    expect(wentWell(await watching.read(idOf(1))).state).toBe('interrupted');
    wentWell(await watching.remove(idOf(1), removedAt));
  });
});

describe('how a set ends', () => {
  test('the result counts, whatever was counted live', async () => {
    const store = await fresh();
    wentWell(await store.begin(header()));
    wentWell(await store.append(header(), [rep(1, { uncertaintyDeg: rep(1).peakDeg }), rep(2)]));
    wentWell(await store.end(header(), { state: 'finished', result: result([rep(1)]) }));
    const set = wentWell(await store.read(idOf(1)));
    expect(set.state).toBe('finished');
    expect(set.reps).toEqual([rep(1)]);
  });

  test('an interrupted set can have a result', async () => {
    const store = await fresh();
    wentWell(await store.begin(header()));
    wentWell(await store.end(header(), { state: 'interrupted', result: result([rep(1)]) }));
    expect(wentWell(await store.read(idOf(1)))).toMatchObject({ state: 'interrupted', result: result([rep(1)]) });
  });

  test('a set whose beginning was not written is written whole at its end', async () => {
    const store = await fresh();
    wentWell(await store.end(header(), { state: 'finished', result: result([rep(1)]) }));
    expect(wentWell(await store.read(idOf(1))).reps).toEqual([rep(1)]);
  });

  test('a file keeps its name', async () => {
    const store = await fresh();
    const file = header({ source: 'file', fileName: 'küche 2.mp4' });
    wentWell(await store.end(file, { state: 'finished', result: result([]) }));
    expect(wentWell(await store.read(idOf(1)))).toMatchObject({ source: 'file', fileName: 'küche 2.mp4' });
  });
});

describe('a list', () => {
  test('gives every set once, the newest first, whatever the page size', async () => {
    const store = await fresh();
    // Several sets began in the same millisecond.
    const moments = [5, 1, 5, 3, 5, 2, 1];
    for (const [i, moment] of moments.entries()) {
      const each = header({ id: idOf(i), startedAt: momentOf(moment) });
      wentWell(await store.end(each, { state: 'finished', result: result([rep(1)]) }));
    }
    for (const limit of [1, 2, 3, 7, 50]) {
      const seen: StoredSet[] = [];
      let page = wentWell(await store.list({ limit }));
      seen.push(...page.sets);
      while (page.next) {
        page = wentWell(await store.list({ limit, after: page.next }));
        expect(page.sets.length).toBeGreaterThan(0);
        seen.push(...page.sets);
      }
      expect(seen.map(({ startedAt }) => startedAt)).toEqual(moments.toSorted((a, b) => b - a).map(momentOf));
      expect(new Set(seen.map(({ id }) => id)).size).toBe(moments.length);
    }
  });

  test('of nothing is empty', async () => {
    expect(wentWell(await (await fresh()).list({ limit: 5 }))).toEqual({ sets: [], damaged: [], next: null });
  });
});

describe('edits', () => {
  const finished = async () => {
    const store = await fresh();
    wentWell(await store.end(header(), { state: 'finished', result: result([rep(1), rep(2)]) }));
    return store;
  };

  test('are kept in the order in which they were made, also within one millisecond, and change no measured repetition', async () => {
    const store = await finished();
    const strike = { ...edit({ kind: 'strike', rep: { kind: 'measured', number: 2 } }), at: momentOf(9) };
    const restore = { ...edit({ kind: 'restore', rep: { kind: 'measured', number: 2 } }), at: momentOf(9) };
    const again = { ...edit({ kind: 'strike', rep: { kind: 'measured', number: 2 } }), at: momentOf(9), note: 'a cough' };
    for (const each of [strike, restore, again]) wentWell(await store.edit(each));
    const set = wentWell(await store.read(idOf(1)));
    // A moment each, so that the same order holds wherever they arrive.
    const later = (n: number) => new Date(Date.parse(momentOf(9)) + n).toISOString();
    expect(set.edits).toEqual([strike, { ...restore, at: later(1) }, { ...again, at: later(2) }]);
    expect(set.reps).toEqual([rep(1), rep(2)]);
    expect(set.result).toEqual(result([rep(1), rep(2)]));
  });

  test('made after the clock was set back hold last all the same', async () => {
    const store = await finished();
    const rep = { kind: 'measured', number: 2 } as const;
    wentWell(await store.edit({ ...edit({ kind: 'strike', rep }), at: momentOf(5000) }));
    wentWell(await store.edit({ ...edit({ kind: 'restore', rep }), at: momentOf(9) }));
    const set = wentWell(await store.read(idOf(1)));
    expect(set.edits.map(({ kind }) => kind)).toEqual(['strike', 'restore']);
    expect(editedCount(set)).toBe(2);
    // One from the end of time keeps its own place: there is no moment after it.
    wentWell(await store.edit({ ...edit({ kind: 'strike', rep }), at: '9999-12-31T23:59:59.999Z' }));
    wentWell(await store.edit({ ...edit({ kind: 'restore', rep }), at: momentOf(10) }));
    expect(wentWell(await store.read(idOf(1))).edits).toHaveLength(4);
  });

  test('of a repetition or a set that is not there are refused', async () => {
    const store = await finished();
    expect(await store.edit(edit({ kind: 'strike', rep: { kind: 'measured', number: 3 } }))).toEqual({
      ok: false,
      error: { kind: 'rep-missing', id: idOf(1) },
    });
    expect(await store.edit(edit({ kind: 'add' }, idOf(7)))).toEqual({ ok: false, error: { kind: 'set-missing', id: idOf(7) } });
    expect(wentWell(await store.read(idOf(1))).edits).toEqual([]);
  });
});

describe('removing a set', () => {
  test('removes all of it and nothing else', async () => {
    const page = fakeBrowser().page();
    const store = await storeOf(page);
    for (const id of [idOf(1), idOf(2)]) {
      const each = header({ id });
      wentWell(await store.begin(each));
      wentWell(await store.append(each, [rep(1)]));
      wentWell(await store.end(each, { state: 'finished', result: result([rep(1)]) }));
      wentWell(await store.edit(edit({ kind: 'add' }, id)));
    }
    wentWell(await store.remove(idOf(1), removedAt));
    expect(await store.read(idOf(1))).toEqual({ ok: false, error: { kind: 'set-missing', id: idOf(1) } });
    expect(await store.remove(idOf(1), removedAt)).toEqual({ ok: false, error: { kind: 'set-missing', id: idOf(1) } });
    expect(wentWell(await store.read(idOf(2)))).toMatchObject({ reps: [rep(1)], edits: [{ kind: 'add' }] });
    // A set of the same id finds nothing of the old one.
    wentWell(await store.begin(header()));
    expect(wentWell(await store.read(idOf(1)))).toMatchObject({ reps: [], edits: [], result: null });
  });
});
