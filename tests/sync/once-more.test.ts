import { expect, test } from 'vitest';
import { onceMore } from '../../src/sync/once-more.ts';

/** A call that ends when the test says so. */
function driven() {
  const ends: (() => void)[] = [];
  const call = () => new Promise<void>((resolve) => ends.push(resolve));
  return { call, begun: () => ends.length, end: () => ends.at(-1)?.() };
}
const settle = () => new Promise((resolve) => setTimeout(resolve));

test('what is asked for while it runs is done once more afterwards, however often it was asked', async () => {
  const { call, begun, end } = driven();
  const ask = onceMore(call);
  const all = [ask(), ask(), ask()];
  expect(begun()).toBe(1);
  end();
  await settle();
  expect(begun()).toBe(2);
  end();
  await Promise.all(all);
  expect(begun()).toBe(2);
  const later = ask();
  expect(begun()).toBe(3);
  end();
  await later;
});

test('after a failure it can be asked for again', async () => {
  let calls = 0;
  const ask = onceMore(async () => {
    calls += 1;
    if (calls === 1) throw new Error('a fault');
  });
  await expect(ask()).rejects.toThrow('a fault');
  await ask();
  expect(calls).toBe(2);
});
