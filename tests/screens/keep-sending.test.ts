import { afterEach, beforeEach, expect, test, vi } from 'vitest';
import { createStore } from 'zustand/vanilla';
import { keepSending } from '../../src/screens/server/keep-sending.ts';
import type { AutomaticState } from '../../src/screens/server/server-services.ts';
import { FIRST_PAUSE_MS, LONGEST_PAUSE_MS, pauseBeforeNext } from '../../src/sync/again-later.ts';
import type { ServerError } from '../../src/sync/server-error.ts';

beforeEach(() => void vi.useFakeTimers({ now: 0 }));
afterEach(() => void vi.useRealTimers());

const CALM: AutomaticState = { working: false, fault: null, failures: 0, sent: null };
const AWAY: ServerError = { kind: 'unreachable' };
const MINUTE = 60_000;

/** A machine whose server answers as the test says. `error` null: all went. */
function machine(chance = () => 1) {
  const automatic = createStore<AutomaticState>(() => CALM);
  const now = { error: AWAY as ServerError | null, online: true, setRuns: false, takesMs: 0 };
  const triedAt: number[] = [];
  const sending = keepSending({
    services: {
      automatic,
      async sendByItself() {
        if (now.setRuns || !now.online) return;
        triedAt.push(Date.now());
        if (now.takesMs > 0) await new Promise((resolve) => setTimeout(resolve, now.takesMs));
        const { error } = now;
        automatic.setState(({ failures }) =>
          error ? { fault: { kind: 'server', error }, failures: failures + 1 } : { fault: null, failures: 0 },
        );
      },
    },
    isOnline: () => now.online,
    chance,
    onFault: (error) => {
      throw error;
    },
  });
  return { now, sending, automatic, triedAt, after: (ms: number) => vi.advanceTimersByTimeAsync(ms) };
}

test('after trouble that may pass it is tried again, later each time up to an hour, until all went', async () => {
  const { now, sending, triedAt, after } = machine();
  sending.now();
  await after(4 * 60 * MINUTE);
  expect(triedAt.map((at) => at / MINUTE)).toEqual([0, 5, 15, 35, 75, 135, 195]);
  now.error = null;
  await after(24 * 60 * MINUTE);
  expect(triedAt).toHaveLength(8);
});

test('the pause has chance in it: between half of its bound and all of it, what the server asked for on top', () => {
  expect(pauseBeforeNext(1, AWAY, 0)).toBe(FIRST_PAUSE_MS / 2);
  expect(pauseBeforeNext(1, AWAY, 1)).toBe(FIRST_PAUSE_MS);
  expect(pauseBeforeNext(99, AWAY, 1)).toBe(LONGEST_PAUSE_MS);
  expect(pauseBeforeNext(1, { kind: 'busy', afterMs: 30 * MINUTE }, 0)).toBe(30 * MINUTE + FIRST_PAUSE_MS / 2);
  expect(pauseBeforeNext(1, { kind: 'failed', status: 503, afterMs: 1e15 }, 0)).toBe(24 * 60 * MINUTE + FIRST_PAUSE_MS / 2);
});

test('what waiting does not mend is not tried again: signed out, not allowed, refused', async () => {
  const others: readonly ServerError[] = [
    { kind: 'signed-out' },
    { kind: 'not-allowed', status: 403 },
    { kind: 'refused', status: 422, detail: '' },
  ];
  for (const error of others) {
    const { now, sending, triedAt, after } = machine();
    now.error = error;
    sending.now();
    await after(48 * 60 * MINUTE);
    expect(triedAt).toHaveLength(1);
  }
});

test('without a network nothing is tried; once it is back, at once', async () => {
  const { now, sending, triedAt, after } = machine();
  sending.now();
  await after(MINUTE);
  now.online = false;
  sending.offline();
  await after(48 * 60 * MINUTE);
  expect(triedAt).toHaveLength(1);
  now.online = true;
  now.error = null;
  sending.now();
  await after(0);
  expect(triedAt).toEqual([0, (1 + 48 * 60) * MINUTE]);
});

test('a network that goes while it is tried leaves no timer behind', async () => {
  const { now, sending, after } = machine();
  now.takesMs = MINUTE;
  sending.now();
  now.online = false;
  sending.offline();
  await after(2 * MINUTE);
  expect(vi.getTimerCount()).toBe(0);
});

test('a server that asks to be left alone is, whatever is stored meanwhile; then it is tried once, with chance in it', async () => {
  const { now, sending, triedAt, after } = machine(() => 0.5);
  now.error = { kind: 'busy', afterMs: 20 * MINUTE };
  sending.now();
  await after(0);
  now.error = null;
  for (let stored = 0; stored < 19; stored += 1) {
    sending.now();
    await after(MINUTE);
  }
  expect(triedAt).toEqual([0]);
  await after(2 * 60 * MINUTE);
  expect(triedAt).toHaveLength(2);
  expect(triedAt[1]).toBeGreaterThan(20 * MINUTE);
  expect(triedAt[1]).toBeLessThan(25 * MINUTE);
});

test('what is stored while it is tried goes once more afterwards, but not into trouble', async () => {
  const well = machine();
  well.now.error = null;
  well.now.takesMs = 1000;
  well.sending.now();
  await well.after(500);
  well.sending.now();
  well.sending.now();
  await well.after(MINUTE);
  expect(well.triedAt).toEqual([0, 1000]);
  const ill = machine();
  ill.now.error = { kind: 'busy', afterMs: 20 * MINUTE };
  ill.now.takesMs = 1000;
  ill.sending.now();
  await ill.after(500);
  ill.sending.now();
  await ill.after(19 * MINUTE);
  expect(ill.triedAt).toHaveLength(1);
});

test('while a set runs nothing is tried, and the timer comes back later', async () => {
  const { now, sending, triedAt, after } = machine();
  sending.now();
  await after(0);
  now.setRuns = true;
  await after(30 * MINUTE);
  expect(triedAt).toHaveLength(1);
  now.setRuns = false;
  now.error = null;
  await after(6 * MINUTE);
  expect(triedAt).toHaveLength(2);
});

test('an attempt that a screen began is tried again, too; there is one timer at most, and none after the end', async () => {
  const { sending, automatic, triedAt, after } = machine();
  automatic.setState({ fault: { kind: 'server', error: AWAY }, failures: 1 });
  expect(vi.getTimerCount()).toBe(1);
  await after(6 * MINUTE);
  expect(triedAt).toHaveLength(1);
  sending.now();
  await after(0);
  expect(vi.getTimerCount()).toBe(1);
  sending.stop();
  expect(vi.getTimerCount()).toBe(0);
  automatic.setState({ failures: 9 });
  await after(48 * 60 * MINUTE);
  expect(triedAt).toHaveLength(2);
});
