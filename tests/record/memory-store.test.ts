import { expect, test } from 'vitest';
import { memoryLocks } from '../../src/record/memory-locks.ts';
import { openMemoryStore } from '../../src/record/memory-store.ts';
import { entryNow } from '../../src/screens/day/entry-now.ts';
import { report } from '../symptoms/told.ts';
import { header, idOf, rep, result } from './set-builders.ts';
import { wentWell } from './went-well.ts';

test('a browser that keeps nothing has the whole store for one visit: sets, changes, diary, people', async () => {
  const store = wentWell(await wentWell(await openMemoryStore()).store);
  wentWell(await store.begin(header()));
  wentWell(await store.append(header(), [rep(1)]));
  wentWell(await store.end(header(), { state: 'finished', result: result([rep(1)]) }));
  wentWell(await store.edit({ id: idOf(50), schema: 1, setId: idOf(1), at: '2026-03-01T00:00:00.000Z', kind: 'add' }));
  const told = report(3, 9);
  wentWell(await store.diary.add([told]));
  expect(wentWell(await store.list({ limit: 5 })).sets.map(({ reps, edits }) => [reps.length, edits.length])).toEqual([[1, 1]]);
  expect(wentWell(await store.diary.all()).entries).toEqual([told]);
  wentWell(await store.remove(idOf(1), entryNow()));
});

test('two visits share nothing, and a lock for what is kept nowhere is refused', async () => {
  const first = wentWell(await openMemoryStore());
  wentWell(await wentWell(await first.store).diary.add([report(3, 9)]));
  const second = wentWell(await openMemoryStore());
  expect(wentWell(await wentWell(await second.store).diary.all()).entries).toEqual([]);
  expect(await first.lock.turnOn('four blue kites')).toMatchObject({ ok: false, error: { kind: 'store-unavailable' } });
  expect(first.lock.state()).toBe('off');
});

test('locks of one page: shared together, exclusive alone and in turn, at once or not at all, and no longer than a signal waits', async () => {
  const locks = memoryLocks();
  const order: string[] = [];
  let free = () => undefined as unknown;
  const holding = locks.request('a', { mode: 'shared' }, () => new Promise<void>((resolve) => (free = resolve)));
  await locks.request('a', { mode: 'shared', ifAvailable: true }, (lock) => void order.push(lock ? 'shared' : 'none'));
  await locks.request('a', { ifAvailable: true }, (lock) => void order.push(lock ? 'exclusive' : 'none'));
  const waiting = locks.request('a', {}, () => void order.push('in turn'));
  await expect(locks.request('a', { signal: AbortSignal.timeout(5) }, () => undefined)).rejects.toThrow();
  free();
  await holding;
  await waiting;
  await locks.request('a', {}, () => void order.push('again'));
  expect(order).toEqual(['shared', 'none', 'in turn', 'again']);
});
