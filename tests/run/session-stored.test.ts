import fc from 'fast-check';
import { afterEach, beforeEach, describe, expect, test, vi } from 'vitest';
import { openSetStore } from '../../src/record/open-store.ts';
import type { SetStore } from '../../src/record/set-store.ts';
import { type SessionOptions, startSession } from '../../src/run/session.ts';
import { WRITE_LIMIT_MS } from '../../src/run/set-journal.ts';
import { ms } from '../../src/units.ts';
import { fakeBrowser } from '../record/fake-browser.ts';
import { rep } from '../record/set-builders.ts';
import { wentWell } from '../record/went-well.ts';
import { liveCamera } from './live-camera.ts';
import { fakeClient, fileSource, pictures, scriptedMeasure } from './scripted-set.ts';
import { freshStore, heard, optionsOf, settle, storedSets } from './session-options.ts';

describe('each repetition', () => {
  test('is on the disk before the next one counts, however slow the disk', async () => {
    const places = fc.uniqueArray(fc.integer({ min: 0, max: 30 }), { minLength: 1, maxLength: 6 });
    const delays = fc.array(fc.integer({ min: 0, max: 25 }), { minLength: 6, maxLength: 6 });
    await fc.assert(
      fc.asyncProperty(places, delays, async (repsAt, ticks) => {
        const store = await freshStore();
        let written = 0;
        const slow: SetStore = {
          ...store,
          append: async (header, reps) => {
            for (let i = ticks[written] ?? 0; i > 0; i -= 1) await new Promise((resolve) => setImmediate(resolve));
            const outcome = await store.append(header, reps);
            if (outcome.ok) written += reps.length;
            return outcome;
          },
        };
        const behind: number[] = [];
        const options = optionsOf({ source: fileSource(pictures().frame, 31), store: slow });
        const onView: SessionOptions['onView'] = ({ count }) => behind.push(count - written);
        wentWell(await startSession({ ...options, onView }, scriptedMeasure({ readyAt: 0, repsAt })).done);
        expect(Math.max(...behind)).toBeLessThanOrEqual(1);
        expect(written).toBe(repsAt.length);
      }),
      { numRuns: 40 },
    );
  });

  test('is on the disk before it is shown, where the disk is quick', async () => {
    const store = await freshStore();
    const written: number[] = [];
    const watched: SetStore = {
      ...store,
      append: async (header, reps) => {
        const outcome = await store.append(header, reps);
        if (outcome.ok) written.push(...reps.map(({ number }) => number));
        return outcome;
      },
    };
    const shown: { readonly number: number; readonly there: boolean }[] = [];
    const options = optionsOf({ source: fileSource(pictures().frame, 31), store: watched });
    const onEvent: SessionOptions['onEvent'] = (event) => {
      if (event.kind === 'rep') shown.push({ number: event.rep.number, there: written.includes(event.rep.number) });
    };
    wentWell(await startSession({ ...options, onEvent }, scriptedMeasure({ readyAt: 0, repsAt: [3, 4, 9, 30] })).done);
    expect(shown).toEqual([1, 2, 3, 4].map((number) => ({ number, there: true })));
  });

  test('is shown all the same when the disk does not answer', async () => {
    const store = await freshStore();
    const never: SetStore = { ...store, append: () => new Promise(() => undefined) };
    const shown: number[] = [];
    const options = optionsOf({ source: fileSource(pictures().frame, 31), store: never });
    const onEvent: SessionOptions['onEvent'] = (event) => {
      if (event.kind === 'rep') shown.push(event.rep.number);
    };
    await startSession({ ...options, onEvent }, scriptedMeasure({ readyAt: 0, repsAt: [3] })).done;
    expect(shown).toEqual([1]);
  });

  test('before the last is there after the page has closed, at whatever frame', async () => {
    await fc.assert(
      fc.asyncProperty(fc.integer({ min: 1, max: 39 }), async (closesAt) => {
        const browser = fakeBrowser();
        const page = browser.page();
        const store = wentWell(await openSetStore(page));
        const repsAt = [4, 9, 10, 25, 38];
        let frames = 0;
        // The page closes while this frame is in work: it never comes back.
        const client = fakeClient(() => (frames++ === closesAt ? new Promise(() => undefined) : Promise.resolve()));
        const source = fileSource(pictures().frame, 40);
        startSession(optionsOf({ source, client, store }), scriptedMeasure({ readyAt: 0, repsAt }));
        await vi.waitFor(() => expect(frames).toBe(closesAt + 1), { interval: 1 });
        await settle();
        page.crash();
        const [set] = await storedSets(wentWell(await openSetStore(browser.page())));
        expect(set?.state).toBe('interrupted');
        expect(set?.reps.length).toBe(repsAt.filter((at) => at < closesAt).length);
      }),
      { numRuns: 25 },
    );
  });
});

describe('two sessions', () => {
  test('on one store keep their repetitions apart', async () => {
    const store = await freshStore();
    const run = (repsAt: readonly number[]) =>
      startSession(optionsOf({ source: fileSource(pictures().frame, 20), store }), scriptedMeasure({ readyAt: 0, repsAt })).done;
    const [one, two] = (await Promise.all([run([3, 9]), run([4])])).map(wentWell);
    expect(one?.reps.length).toBe(2);
    expect(two?.reps.length).toBe(1);
    const sets = await storedSets(store);
    expect(sets).toEqual(expect.arrayContaining([one, two]));
    expect(sets.length).toBe(2);
  });
});

describe('a store that fails', () => {
  const full = { ok: false, error: { kind: 'store-full' } } as const;

  test('for a while is told of once; the set goes on and is stored whole in the end', async () => {
    const store = await freshStore();
    let fails = 3;
    const flaky: SetStore = { ...store, append: async (header, reps) => (fails-- > 0 ? full : store.append(header, reps)) };
    const to = heard();
    const source = fileSource(pictures().frame, 30);
    const { done } = startSession(
      optionsOf({ source, store: flaky }, to),
      scriptedMeasure({ readyAt: 0, repsAt: [3, 6, 9, 12] }),
    );
    const set = wentWell(await done);
    expect(to.troubles).toEqual(['store-full', null]);
    expect(to.events.filter(({ kind }) => kind === 'rep').length).toBe(4);
    expect(await storedSets(store)).toEqual([set]);
  });

  test('for a while keeps nothing back: the next write takes what is pending along', async () => {
    const browser = fakeBrowser();
    const page = browser.page();
    const store = wentWell(await openSetStore(page));
    let fails = 2;
    const flaky: SetStore = { ...store, append: async (header, reps) => (fails-- > 0 ? full : store.append(header, reps)) };
    const client = fakeClient((tMs) => (tMs > 500 ? new Promise(() => undefined) : Promise.resolve()));
    const to = heard();
    const source = fileSource(pictures().frame, 30);
    startSession(optionsOf({ source, client, store: flaky }, to), scriptedMeasure({ readyAt: 0, repsAt: [3, 6, 9] }));
    await vi.waitFor(() => expect(to.counts.length).toBe(16));
    page.crash();
    const [set] = await storedSets(wentWell(await openSetStore(browser.page())));
    expect(set).toMatchObject({ state: 'interrupted', reps: [rep(1), rep(2), rep(3)] });
  });

  test('to the end: the set is given back, and that it is not on the disk', async () => {
    const store: SetStore = {
      ...(await freshStore()),
      begin: async () => full,
      append: async () => full,
      end: async () => full,
    };
    const to = heard();
    const source = fileSource(pictures().frame, 30);
    const { done } = startSession(optionsOf({ source, store }, to), scriptedMeasure({ readyAt: 0, repsAt: [3, 6] }));
    expect(await done).toMatchObject({
      ok: false,
      error: { kind: 'not-stored', storeError: { kind: 'store-full' }, kept: { reps: [rep(1), rep(2)] } },
    });
    expect(to.troubles).toEqual(['store-full']);
    expect(to.counts.length).toBe(30);
  });

  test('one repetition that does not fit the store does not hold back those after it', async () => {
    const browser = fakeBrowser();
    const page = browser.page();
    const store = wentWell(await openSetStore(page));
    const spoilt: SetStore = {
      ...store,
      append: (header, reps) =>
        store.append(
          header,
          reps.map((each) => (each.number === 1 ? rep(1, { holdMs: ms(Number.NaN) }) : each)),
        ),
    };
    const client = fakeClient((tMs) => (tMs > 500 ? new Promise(() => undefined) : Promise.resolve()));
    const to = heard();
    const source = fileSource(pictures().frame, 30);
    startSession(optionsOf({ source, client, store: spoilt }, to), scriptedMeasure({ readyAt: 0, repsAt: [3, 6] }));
    await vi.waitFor(() => expect(to.counts.length).toBe(16));
    page.crash();
    const [set] = await storedSets(wentWell(await openSetStore(browser.page())));
    expect(set?.reps).toEqual([rep(2)]);
    expect(to.troubles).toEqual(['store-refused', null]);
  });
});

describe('with a clock of the test’s own', () => {
  beforeEach(() => {
    vi.useFakeTimers();
  });
  afterEach(() => {
    vi.useRealTimers();
  });

  test('a store that hangs holds a live set up once, for a limited time, and is told of', async () => {
    const hangs = () => new Promise<never>(() => undefined);
    const store = { begin: hangs, append: hangs, end: hangs } as unknown as SetStore;
    const to = heard();
    const source = liveCamera(pictures().frame);
    const session = startSession(optionsOf({ source, store }, to), scriptedMeasure({ readyAt: 0, repsAt: [2, 20, 40, 60] }));
    await vi.advanceTimersByTimeAsync(70 * 33 + WRITE_LIMIT_MS);
    expect(to.events.filter(({ kind }) => kind === 'rep').length).toBe(4);
    expect(to.troubles).toEqual(['store-stalled']);
    session.stop();
    const outcome = session.done;
    await vi.advanceTimersByTimeAsync(WRITE_LIMIT_MS);
    expect(await outcome).toMatchObject({ ok: false, error: { kind: 'not-stored', storeError: { kind: 'store-stalled' } } });
  });
});
