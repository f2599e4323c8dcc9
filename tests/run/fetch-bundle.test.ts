import { afterEach, beforeEach, expect, test, vi } from 'vitest';
import { ok } from '../../src/result.ts';
import { bundleFacts, sha256Of } from '../../src/run/bundle-facts.ts';
import type { Download } from '../../src/run/download.ts';
import { fetchBundle } from '../../src/run/fetch-bundle.ts';
import { fakeCaches } from './fake-caches.ts';

const SITE = 'http://here.test/sub/';
const RIGHT = new TextEncoder().encode('the right model');
const WRONG = new TextEncoder().encode('quite another 1');
const SHA256 = await sha256Of(RIGHT);
const KEY = `${SITE}models/pose_full.task?sha256=${SHA256}`;

let browser: ReturnType<typeof fakeCaches>;
beforeEach(() => {
  browser = fakeCaches();
  vi.stubGlobal('caches', browser.caches);
});
afterEach(() => vi.unstubAllGlobals());

/** Fetches from a server whose answers come one after the other. */
async function fetched(answers: Uint8Array<ArrayBuffer>[] = [], site = SITE) {
  const asked: Pick<Download, 'url' | 'anew'>[] = [];
  const came = await fetchBundle(site, 'full', () => undefined, {
    facts: () => ({ bytes: RIGHT.length, sha256: SHA256 }),
    download: async ({ url, anew }) => {
      asked.push({ url, anew: anew ?? false });
      const answer = answers.shift();
      if (!answer) throw new Error('fetched requires no more downloads than answers');
      return ok(answer);
    },
  });
  return { came, asked };
}

test('a bundle with the right hash is used and kept, and the next time comes from the cache', async () => {
  expect((await fetched([RIGHT])).came).toEqual(ok(RIGHT));
  expect([...browser.kept.keys()]).toEqual([KEY]);
  const again = await fetched();
  expect(again.came).toEqual(ok(RIGHT));
  expect(again.asked).toEqual([]);
});

test('a bundle with a wrong hash is fetched once more past the cache, and then never used nor kept', async () => {
  const { came, asked } = await fetched([WRONG, WRONG]);
  expect(came).toEqual({ ok: false, error: { kind: 'bundle-wrong', model: 'full' } });
  expect(asked.map(({ anew }) => anew)).toEqual([false, true]);
  expect(browser.kept.size).toBe(0);
});

test('what the browser had kept wrongly is let go and fetched again', async () => {
  browser.kept.set(KEY, WRONG);
  expect((await fetched([RIGHT])).came).toEqual(ok(RIGHT));
  expect(browser.kept.get(KEY)).toEqual(RIGHT);
});

test('a new bundle takes the place of an older one of the same model, not of another model', async () => {
  const older = `${SITE}models/pose_full.task?sha256=00`;
  const other = `${SITE}models/pose_lite.task?sha256=11`;
  browser.kept.set(older, WRONG);
  browser.kept.set(other, WRONG);
  await fetched([RIGHT]);
  expect([...browser.kept.keys()].sort()).toEqual([KEY, other].sort());
});

test('without caches, or without room in them, a bundle is used all the same', async () => {
  vi.stubGlobal('caches', undefined);
  expect((await fetched([RIGHT])).came).toEqual(ok(RIGHT));
  const full = () => Promise.reject(new DOMException('full', 'QuotaExceededError'));
  vi.stubGlobal('caches', { match: async () => undefined, open: full });
  expect((await fetched([RIGHT])).came).toEqual(ok(RIGHT));
});

test('without room nothing of a bundle is kept, and it is used again in this visit without another download, until there is room', async () => {
  const site = 'http://full.test/';
  const { caches: roomy } = browser;
  const cache = await roomy.open();
  const full = () => Promise.reject(new DOMException('full', 'QuotaExceededError'));
  vi.stubGlobal('caches', { ...roomy, open: async () => ({ ...cache, put: full }) });
  expect((await fetched([RIGHT], site)).came).toEqual(ok(RIGHT));
  expect(await fetched([], site)).toEqual({ came: ok(RIGHT), asked: [] });
  expect(browser.kept.size).toBe(0);
  vi.stubGlobal('caches', roomy);
  expect(await fetched([], site)).toEqual({ came: ok(RIGHT), asked: [] });
  expect([...browser.kept.values()]).toEqual([RIGHT]);
});

test('where an older bundle takes the room, it makes way', async () => {
  const older = `${SITE}models/pose_full.task?sha256=00`;
  browser.kept.set(older, WRONG);
  const { caches: roomy } = browser;
  const cache = await roomy.open();
  const put: typeof cache.put = async (key, answer) => {
    if (browser.kept.size > 0) throw new DOMException('full', 'QuotaExceededError');
    return cache.put(key, answer);
  };
  vi.stubGlobal('caches', { ...roomy, open: async () => ({ ...cache, put }) });
  expect((await fetched([RIGHT])).came).toEqual(ok(RIGHT));
  expect([...browser.kept.keys()]).toEqual([KEY]);
});

test('every model that can be chosen has its length and hash', () => {
  for (const model of ['lite', 'full', 'heavy'] as const) {
    const { bytes, sha256 } = bundleFacts(model);
    expect(bytes).toBeGreaterThan(1e6);
    expect(sha256).toMatch(/^[0-9a-f]{64}$/);
  }
});
