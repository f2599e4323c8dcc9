// @vitest-environment jsdom
import { afterEach, beforeEach, describe, expect, test, vi } from 'vitest';
import { idleLock } from '../../src/screens/adapter/idle-lock.ts';

const MINUTE = 60_000;

/** The tabs of one browser: what one says, the others hear. */
function tabs() {
  const all: { readonly hear: ((event: MessageEvent) => void)[] }[] = [];
  return () => {
    const mine = { hear: [] as ((event: MessageEvent) => void)[] };
    all.push(mine);
    return {
      postMessage: (data: unknown) => {
        for (const other of all) if (other !== mine) for (const hear of other.hear) hear({ data } as MessageEvent);
      },
      addEventListener: (_: string, hear: (event: MessageEvent) => void) => mine.hear.push(hear),
    } as unknown as BroadcastChannel;
  };
}

function tab(channel = tabs()(), over: { busy?: () => boolean; isOpen?: () => boolean } = {}) {
  const lockHere = vi.fn();
  const idle = idleLock({ isOpen: () => true, busy: () => false, lockHere, now: Date.now, channel, ...over });
  return { ...idle, lockHere };
}

beforeEach(() => {
  vi.useFakeTimers();
});
afterEach(() => {
  vi.useRealTimers();
});

describe('a page with open records', () => {
  test('locks after fifteen minutes without a touch or a key, and not before', () => {
    const { lockHere } = tab();
    vi.advanceTimersByTime(10 * MINUTE);
    window.dispatchEvent(new Event('keydown'));
    vi.advanceTimersByTime(14 * MINUTE);
    expect(lockHere).not.toHaveBeenCalled();
    vi.advanceTimersByTime(1.5 * MINUTE);
    expect(lockHere).toHaveBeenCalled();
  });

  test('locks at the first touch after the machine slept for longer than that', () => {
    const { lockHere } = tab();
    vi.setSystemTime(Date.now() + 60 * MINUTE);
    window.dispatchEvent(new Event('pointerdown'));
    expect(lockHere).toHaveBeenCalledTimes(1);
  });

  test('does not lock while a set runs, nor at once when it is over', () => {
    let busy = true;
    const { lockHere } = tab(undefined, { busy: () => busy });
    vi.advanceTimersByTime(60 * MINUTE);
    busy = false;
    vi.advanceTimersByTime(14 * MINUTE);
    expect(lockHere).not.toHaveBeenCalled();
    vi.advanceTimersByTime(2 * MINUTE);
    expect(lockHere).toHaveBeenCalled();
  });

  test('does nothing where there is no lock', () => {
    const { lockHere } = tab(undefined, { isOpen: () => false });
    vi.advanceTimersByTime(60 * MINUTE);
    expect(lockHere).not.toHaveBeenCalled();
  });
});

describe('other tabs', () => {
  test('lock when they are told to; one in which a set runs does so when it is over', () => {
    const channel = tabs();
    let busy = true;
    const [one, other, running] = [tab(channel()), tab(channel()), tab(channel(), { busy: () => busy })];
    one.lockOthers();
    expect(other.lockHere).toHaveBeenCalledTimes(1);
    vi.advanceTimersByTime(5 * MINUTE);
    expect(running.lockHere).not.toHaveBeenCalled();
    busy = false;
    vi.advanceTimersByTime(MINUTE);
    expect(running.lockHere).toHaveBeenCalled();
  });

  test('hear of a touch, and stay open as long as one is in use', () => {
    const channel = tabs();
    const listening = tab(channel());
    const used = channel();
    for (let minute = 0; minute < 40; minute += 1) {
      used.postMessage('touch');
      vi.advanceTimersByTime(MINUTE);
    }
    expect(listening.lockHere).not.toHaveBeenCalled();
  });

  test('hear of many touches only now and then', () => {
    const channel = tabs();
    const heard = vi.fn();
    channel().addEventListener('message', heard);
    tab(channel());
    heard.mockClear();
    for (let i = 0; i < 100; i += 1) window.dispatchEvent(new Event('pointermove'));
    expect(heard.mock.calls.length).toBeLessThanOrEqual(1);
  });
});
