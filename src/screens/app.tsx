import { Suspense } from 'react';
import { Route, Router, Switch } from 'wouter';
import { useHashLocation } from 'wouter/use-hash-location';
import {
  BringScreen,
  DueWatcher,
  LockScreen,
  NewPersonScreen,
  PeopleScreen,
  PersonScreen,
  ServerWatch,
  SiteWatch,
  StoredScreen,
} from './later-screens.tsx';
import { LockGate } from './lock/lock-gate.tsx';
import { usePerson } from './people/person-context.tsx';
import { PersonFrame } from './people/person-frame.tsx';
import { PersonScreens } from './person-screens.tsx';
import { knownServer } from './server/known-server.ts';
import { useServices } from './services-context.tsx';
import { StartScreen } from './start/start-screen.tsx';
import { UnsupportedScreen } from './start/unsupported-screen.tsx';
import { useWords } from './words/words-context.tsx';

function PersonHome() {
  const inUse = usePerson();
  return inUse && <PersonScreen {...inUse} />;
}

/** All screens, told apart by the part of the address after the #, so that they work from any static folder. */
export function App() {
  const missing = useServices().missing();
  const { app } = useWords();
  const server = knownServer();
  if (missing.length > 0) return <UnsupportedScreen missing={missing} />;
  return (
    <Router hook={useHashLocation}>
      <Suspense>
        <SiteWatch />
      </Suspense>
      <Suspense fallback={<p className="heard">{app.loading}</p>}>
        <LockGate>
          <Suspense>
            <DueWatcher />
            {server ? <ServerWatch /> : null}
          </Suspense>
          <Switch>
            <Route path="/lock" component={LockScreen} />
            <Route path="/stored" component={StoredScreen} />
            <Route path="/people" component={PeopleScreen} />
            <Route path="/people/new" component={NewPersonScreen} />
            <Route path="/people/bring">
              <BringScreen forAnybody />
            </Route>
            <Route path="/person/:id" nest>
              {({ id }) => (
                <PersonFrame id={id} key={id}>
                  <PersonScreens home={<PersonHome />} />
                </PersonFrame>
              )}
            </Route>
            <Route>
              <PersonScreens home={<StartScreen />} />
            </Route>
          </Switch>
        </LockGate>
      </Suspense>
    </Router>
  );
}
