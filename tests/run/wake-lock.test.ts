import { afterEach, describe, expect, test, vi } from 'vitest';
import { keepScreenOn } from '../../src/run/wake-lock.ts';

const settle = () => new Promise((resolve) => setImmediate(resolve));

/** A page whose screen lock can be refused, and is taken away while the page is hidden. */
function page({ refuses = false } = {}) {
  let asked = 0;
  let held = 0;
  const locks: EventTarget[] = [];
  const document = Object.assign(new EventTarget(), { visibilityState: 'visible' as DocumentVisibilityState });
  const request = async () => {
    asked += 1;
    if (refuses) throw new DOMException('low battery', 'NotAllowedError');
    held += 1;
    let released = false;
    const release = async () => {
      if (!released) held -= 1;
      released = true;
    };
    const lock = Object.assign(new EventTarget(), { release });
    locks.push(lock);
    return lock as unknown as WakeLockSentinel;
  };
  const show = (state: DocumentVisibilityState) => {
    document.visibilityState = state;
    document.dispatchEvent(new Event('visibilitychange'));
  };
  return { platform: { wakeLock: { request }, document }, show, asked: () => asked, held: () => held, locks };
}

afterEach(() => {
  vi.useRealTimers();
});

describe('keeping the screen on', () => {
  test('taken away while the page shows is told, and asked for again after a while', async () => {
    vi.useFakeTimers();
    const { platform, asked, locks } = page();
    const kept: boolean[] = [];
    const letGo = keepScreenOn((is) => kept.push(is), platform);
    await vi.advanceTimersByTimeAsync(0);
    locks[0]?.dispatchEvent(new Event('release'));
    expect(kept).toEqual([true, false]);
    expect(asked()).toBe(1);
    await vi.advanceTimersByTimeAsync(10_000);
    expect(asked()).toBe(2);
    expect(kept).toEqual([true, false, true]);
    letGo();
    await vi.advanceTimersByTimeAsync(60_000);
    expect(asked()).toBe(2);
  });

  test('refused is told, and asked for again after a while', async () => {
    vi.useFakeTimers();
    const { platform, asked } = page({ refuses: true });
    const kept: boolean[] = [];
    const letGo = keepScreenOn((is) => kept.push(is), platform);
    await vi.advanceTimersByTimeAsync(25_000);
    expect(kept).toEqual([false, false, false]);
    expect(asked()).toBe(3);
    letGo();
  });

  test('holds until it is let go', async () => {
    const { platform, held } = page();
    const letGo = keepScreenOn(undefined, platform);
    await settle();
    expect(held()).toBe(1);
    letGo();
    expect(held()).toBe(0);
  });

  test('asks again when the page shows again, and holds one at a time', async () => {
    const { platform, show, asked, held } = page();
    const letGo = keepScreenOn(undefined, platform);
    await settle();
    show('hidden');
    await settle();
    expect(asked()).toBe(1);
    show('visible');
    await settle();
    expect(asked()).toBe(2);
    expect(held()).toBe(1);
    letGo();
    show('visible');
    await settle();
    expect(asked()).toBe(2);
    expect(held()).toBe(0);
  });

  test('let go before the browser has answered holds nothing', async () => {
    const { platform, held } = page();
    keepScreenOn(undefined, platform)();
    await settle();
    expect(held()).toBe(0);
  });

  test('refused or not known changes nothing else', async () => {
    const { platform, asked } = page({ refuses: true });
    const letGo = keepScreenOn(undefined, platform);
    await settle();
    expect(asked()).toBe(1);
    letGo();
    expect(() => keepScreenOn(undefined, null)()).not.toThrow();
  });
});
