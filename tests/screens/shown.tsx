import { configure, fireEvent, render, screen, waitFor } from '@testing-library/react';
import type { ReactNode } from 'react';
import { App } from '../../src/screens/app.tsx';
import type { AppServices } from '../../src/screens/services.ts';
import { ServicesContext } from '../../src/screens/services-context.tsx';
import { RunContext } from '../../src/screens/set/run-context.tsx';
import { SoundsContext } from '../../src/screens/set/sounds-context.tsx';
import { fakeRun } from './fake-run.ts';

// What waits for something on the screen waits on a busy machine too; it goes on as soon as it is there.
configure({ asyncUtilTimeout: 15_000 });

/** Shows the whole app at an address. @param within what it stands in: other words */
export function shownAt(path: string, services: AppServices, within: (app: ReactNode) => ReactNode = (app) => app) {
  // jsdom has no layout to scroll.
  window.scrollTo = () => undefined;
  window.location.hash = path;
  const driver = fakeRun(services);
  const view = render(
    <ServicesContext value={services}>
      <SoundsContext value={driver.sounds}>
        <RunContext value={driver.run}>{within(<App />)}</RunContext>
      </SoundsContext>
    </ServicesContext>,
  );
  return { ...driver, ...view };
}

/** Presses a button once it is there and can be pressed: some wait until the diary is read. */
export async function press(name: string | RegExp): Promise<void> {
  const button = await screen.findByRole<HTMLButtonElement>('button', { name });
  await waitFor(() => {
    if (button.disabled) throw new Error(`press requires the button ${name} to be enabled, it is not`);
  });
  fireEvent.click(button);
}
