import { configure, render } from '@testing-library/react';
import { App } from '../../src/screens/app.tsx';
import type { AppServices } from '../../src/screens/services.ts';
import { ServicesContext } from '../../src/screens/services-context.tsx';
import { RunContext } from '../../src/screens/set/run-context.tsx';
import { SoundsContext } from '../../src/screens/set/sounds-context.tsx';
import { fakeRun } from './fake-run.ts';

// What waits for something on the screen waits on a busy machine too; it goes on as soon as it is there.
configure({ asyncUtilTimeout: 15_000 });

/** Shows the whole app at an address. */
export function shownAt(path: string, services: AppServices) {
  // jsdom has no layout to scroll.
  window.scrollTo = () => undefined;
  window.location.hash = path;
  const driver = fakeRun(services);
  const view = render(
    <ServicesContext value={services}>
      <SoundsContext value={driver.sounds}>
        <RunContext value={driver.run}>
          <App />
        </RunContext>
      </SoundsContext>
    </ServicesContext>,
  );
  return { ...driver, ...view };
}
