import { afterEach, beforeEach, expect, test, vi } from 'vitest';
import { around, aroundSets, isSetRunning } from '../../src/screens/adapter/server-around.ts';

const ADDRESS = 'https://fhir.example.org/r4/Patient/1';
const GET = { method: 'GET', headers: {} } as const;

/** Names of the locks that all tabs hold now. */
let held: readonly string[] = [];
const asked: { readonly url: string; readonly options: RequestInit }[] = [];
beforeEach(() => {
  vi.useFakeTimers();
  held = [];
  asked.length = 0;
  vi.stubGlobal('navigator', { locks: { query: async () => ({ held: held.map((name) => ({ name })), pending: [] }) } });
  vi.stubGlobal('fetch', async (url: string, options: RequestInit) => {
    asked.push({ url, options });
    return new Response('{}');
  });
});
afterEach(() => {
  vi.useRealTimers();
  vi.unstubAllGlobals();
});

test('a set that runs in any tab is seen by its lock, other locks are not taken for one', async () => {
  held = ['evenside-server', 'evenside-in-the-middle'];
  expect(await isSetRunning()).toBe(false);
  held = [...held, 'evenside-set-00000000-0000-4000-8000-000000000001'];
  expect(await isSetRunning()).toBe(true);
});

test('what goes by itself asks nothing while a set runs, and asks once it is over', async () => {
  held = ['evenside-set-1'];
  const answer = aroundSets.http(ADDRESS, GET);
  await vi.advanceTimersByTimeAsync(60_000);
  expect(asked).toEqual([]);
  held = [];
  await vi.advanceTimersByTimeAsync(5_000);
  expect((await answer).status).toBe(200);
  expect(asked.map(({ url }) => url)).toEqual([ADDRESS]);
});

test('what a person asks for is asked at once, without cookies, copies or redirects', async () => {
  held = ['evenside-set-1'];
  await around.http(ADDRESS, GET);
  expect(asked).toEqual([{ url: ADDRESS, options: { ...GET, credentials: 'omit', cache: 'no-store', redirect: 'error' } }]);
});
