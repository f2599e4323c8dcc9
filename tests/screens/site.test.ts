import { describe, expect, test, vi } from 'vitest';
import { isResting } from '../../src/screens/offline/resting.ts';
import { createSite, type Kept, type SiteNeeds } from '../../src/screens/offline/site.ts';
import { byteSize } from '../../src/screens/stored/byte-size.ts';

/** A page of a site whose service worker the test drives. */
function page(change: Partial<SiteNeeds> = {}) {
  const told = { waiting: () => {}, taken: () => {} };
  const kept = new Set<string>();
  const take = vi.fn();
  const reload = vi.fn();
  const keep = vi.fn(async (model: string): Promise<Kept> => (kept.add(model).has(model) ? 'kept' : 'failed'));
  const site = createSite({
    worker: {
      take,
      start: async (waiting, taken) => {
        Object.assign(told, { waiting, taken });
        return 'kept';
      },
    },
    models: { isKept: async (model) => kept.has(model), keep },
    locks: null,
    saveData: false,
    reload,
    ...change,
  });
  return { site, told, kept, take, reload, keep, readiness: () => site.state.getState().readiness };
}

describe('all is ready without a network', () => {
  test('once the site is kept and the chosen model is here', async () => {
    const { site, readiness, keep } = page();
    expect(readiness()).toBe('starting');
    await site.start();
    expect(readiness()).toBe('starting');
    await site.keep('full');
    expect(readiness()).toBe('ready');
    await site.keep('full');
    expect(keep).toHaveBeenCalledTimes(1);
  });

  test('not where the browser has no service worker, or refuses it, and everything else works as before', async () => {
    const none = page({ worker: null });
    await none.site.start();
    await none.site.keep('full');
    expect(none.readiness()).toBe('without');
    const refused = page({ worker: { take: vi.fn(), start: () => Promise.reject(new Error('refused')) } });
    await refused.site.start();
    await refused.site.keep('full');
    expect(refused.readiness()).toBe('without');
    expect(refused.keep).not.toHaveBeenCalled();
  });

  test('not when the model did not come, until it is tried again', async () => {
    const { site, readiness, keep } = page();
    keep.mockResolvedValueOnce('failed');
    await site.start();
    await site.keep('full');
    expect(readiness()).toBe('failed');
    await site.keep('full', true);
    expect(readiness()).toBe('ready');
  });

  test('not where the site or the model has no room; the model is asked for again once the person says so', async () => {
    const { site, readiness, keep } = page();
    keep.mockResolvedValueOnce('no-room');
    await site.start();
    await site.keep('full');
    expect(readiness()).toBe('no-room');
    await site.keep('full', true);
    expect(readiness()).toBe('ready');
    const full = page({ worker: { take: vi.fn(), start: async () => 'no-room' } });
    await full.site.start();
    await full.site.keep('full');
    expect(full.readiness()).toBe('no-room');
    expect(full.keep).not.toHaveBeenCalled();
  });

  test('only when the person asks for it, where the browser is to save data', async () => {
    const { site, readiness } = page({ saveData: true });
    await site.start();
    await site.keep('full');
    expect(readiness()).toBe('waits');
    await site.keep('full', true);
    expect(readiness()).toBe('ready');
  });
});

describe('a new version', () => {
  test('that another tab took comes in once this page is calm', async () => {
    const { site, told, reload } = page();
    await site.start();
    site.calm(false);
    told.taken();
    expect(reload).not.toHaveBeenCalled();
    site.calm(true);
    expect(reload).toHaveBeenCalledTimes(1);
  });

  test('is told of, and comes in at once where nothing is under way', async () => {
    const { site, told, take, reload } = page();
    await site.start();
    told.waiting();
    expect(site.state.getState().newVersion).toBe(true);
    await site.take();
    expect(take).toHaveBeenCalledTimes(1);
    told.taken();
    expect(reload).toHaveBeenCalledTimes(1);
  });

  test('is offered on screens between two things only', () => {
    for (const address of ['/', '/today', '/stored', '/people', '/person/p1', '/person/p1/today'])
      expect(isResting(address)).toBe(true);
    for (const address of [
      '/run',
      '/plan',
      '/person/p1/plan',
      '/questions',
      '/feel/after/1',
      '/by-hand/1/left',
      '/desk',
      '/lock',
    ])
      expect(isResting(address)).toBe(false);
  });
});

test.each([
  [0, '0 kB'],
  [512, '0.51 kB'],
  [9_407_110, '9.4 MB'],
  [11_000_000_000, '11 GB'],
])('%d bytes are written as %s', (bytes, words) => {
  expect(byteSize('en', bytes)).toBe(words);
});
