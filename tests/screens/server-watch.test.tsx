// @vitest-environment jsdom
import { cleanup, configure, render, waitFor } from '@testing-library/react';
import { Suspense } from 'react';
import { afterEach, expect, test, vi } from 'vitest';
import { createStore } from 'zustand/vanilla';
import type { AutomaticState, ServerServices } from '../../src/screens/server/server-services.ts';
import { ServerWatch } from '../../src/screens/server/server-watch.tsx';
import { ServicesContext } from '../../src/screens/services-context.tsx';
import { RunContext } from '../../src/screens/set/run-context.tsx';
import { FIRST_PAUSE_MS } from '../../src/sync/again-later.ts';
import { fakeRun } from './fake-run.ts';
import { fakeServices } from './fake-services.ts';

// What waits for something on the screen waits on a busy machine too.
configure({ asyncUtilTimeout: 15_000 });
afterEach(() => {
  cleanup();
  vi.useRealTimers();
  vi.restoreAllMocks();
  document.head.replaceChildren();
});

test('the page sends when it is opened, when something was stored and when the network is back, by a timer after trouble, and not once it is closed', async () => {
  const known = document.createElement('meta');
  known.name = 'evenside-fhir-server';
  known.content = 'https://clinic.invalid/fhir';
  document.head.append(known);
  const automatic = createStore<AutomaticState>(() => ({ working: false, fault: null, failures: 0, sent: null }));
  let tries = 0;
  const server = {
    automatic,
    sendByItself: async () => {
      tries += 1;
    },
  } as Partial<ServerServices> as ServerServices;
  let stored: () => void = () => undefined;
  const { services } = fakeServices([], {
    server: async () => server,
    onStored: (told) => {
      stored = told;
      return () => {
        stored = () => undefined;
      };
    },
  });
  const { unmount } = render(
    <ServicesContext value={services}>
      <RunContext value={fakeRun(services).run}>
        <Suspense>
          <ServerWatch />
        </Suspense>
      </RunContext>
    </ServicesContext>,
  );
  await waitFor(() => expect(tries).toBe(1));
  stored();
  await waitFor(() => expect(tries).toBe(2));
  // Each attempt ends before the next is asked for.
  await new Promise((resolve) => setTimeout(resolve));
  window.dispatchEvent(new Event('online'));
  await waitFor(() => expect(tries).toBe(3));
  await new Promise((resolve) => setTimeout(resolve));

  vi.useFakeTimers();
  const trouble = (failures: number) =>
    automatic.setState({ fault: { kind: 'server', error: { kind: 'unreachable' } }, failures });
  trouble(1);
  await vi.advanceTimersByTimeAsync(FIRST_PAUSE_MS);
  expect(tries).toBe(4);
  // The network goes: the timer that runs is stopped.
  window.dispatchEvent(new Event('offline'));
  await vi.advanceTimersByTimeAsync(100 * FIRST_PAUSE_MS);
  expect(tries).toBe(4);
  trouble(2);
  unmount();
  window.dispatchEvent(new Event('online'));
  stored();
  await vi.advanceTimersByTimeAsync(100 * FIRST_PAUSE_MS);
  expect(tries).toBe(4);
});
