import { useEffect } from 'react';
import { Redirect, Route, Router, Switch, useLocation } from 'wouter';
import { useHashLocation } from 'wouter/use-hash-location';
import { SelfCheckScreen } from './check/self-check-screen.tsx';
import { ChooseScreen } from './choose/choose-screen.tsx';
import { CompareScreen } from './compare/compare-screen.tsx';
import { AskScreen } from './day/ask-screen.tsx';
import { ByHandScreen, FreeByHandScreen } from './day/by-hand-screen.tsx';
import { DueWatcher } from './day/due-watcher.tsx';
import { GoScreen } from './day/go-screen.tsx';
import { QuestionsScreen } from './day/questions-screen.tsx';
import { TodayScreen } from './day/today-screen.tsx';
import { DeskScreen } from './desk/desk-screen.tsx';
import { AfterScreen } from './feel/after-screen.tsx';
import { BeforeScreen } from './feel/before-screen.tsx';
import { CheckInScreen } from './feel/check-in-screen.tsx';
import { GiveScreen } from './hand-over/give-screen.tsx';
import { TakeScreen } from './hand-over/take-screen.tsx';
import { LockGate } from './lock/lock-gate.tsx';
import { LockScreen } from './lock/lock-screen.tsx';
import { Page } from './parts/page.tsx';
import { PlanScreen } from './plan/plan-screen.tsx';
import { ProgressScreen } from './progress/progress-screen.tsx';
import { ReportScreen } from './report/report-screen.tsx';
import { ResultScreen } from './result/result-screen.tsx';
import { SafetyScreen } from './safety/safety-screen.tsx';
import { useServices } from './services-context.tsx';
import { useRun } from './set/run-context.tsx';
import { SetScreen } from './set/set-screen.tsx';
import { StartScreen } from './start/start-screen.tsx';
import { UnsupportedScreen } from './start/unsupported-screen.tsx';
import { useWords } from './words/words-context.tsx';

function Screens() {
  const run = useRun();
  const [location] = useLocation();
  const { app } = useWords();
  // A set runs on its own screen only: whoever goes elsewhere has ended it.
  useEffect(() => {
    if (location !== '/run') run.leave();
  }, [location, run]);
  return (
    <Switch>
      <Route path="/" component={StartScreen} />
      <Route path="/urgent" component={SafetyScreen} />
      <Route path="/choose/camera">
        <ChooseScreen kind="camera" />
      </Route>
      <Route path="/choose/file">
        <ChooseScreen kind="file" />
      </Route>
      <Route path="/choose/:other">
        <Redirect to="/" replace />
      </Route>
      <Route path="/run" component={SetScreen} />
      <Route path="/set/:id">{({ id }) => <ResultScreen id={id} key={id} />}</Route>
      <Route path="/today" component={TodayScreen} />
      <Route path="/plan" component={PlanScreen} />
      <Route path="/plan/give" component={GiveScreen} />
      <Route path="/take">
        <TakeScreen code={null} key="none" />
      </Route>
      <Route path="/take/*?">{({ '*': code }) => <TakeScreen code={code ?? ''} key={code} />}</Route>
      <Route path="/questions">
        <QuestionsScreen then="/today" />
      </Route>
      <Route path="/questions/free">
        <QuestionsScreen then="/choose/camera" />
      </Route>
      <Route path="/questions/:itemId/:side">
        {({ itemId, side }) => <QuestionsScreen then={`/today/ask/${itemId}/${side}`} />}
      </Route>
      <Route path="/today/ask/:itemId/:side">{(line) => <AskScreen {...line} />}</Route>
      <Route path="/today/go/:itemId/:side">{(line) => <GoScreen {...line} />}</Route>
      <Route path="/by-hand/:itemId/:side">{(line) => <ByHandScreen {...line} />}</Route>
      <Route path="/count/:exercise/:side">{(set) => <FreeByHandScreen {...set} />}</Route>
      <Route path="/feel/before/:itemId/:side">{(line) => <BeforeScreen {...line} />}</Route>
      <Route path="/feel/after/:setId">{({ setId }) => <AfterScreen setId={setId} key={setId} />}</Route>
      <Route path="/lock" component={LockScreen} />
      <Route path="/desk" component={DeskScreen} />
      <Route path="/progress" component={ProgressScreen} />
      <Route path="/report" component={ReportScreen} />
      <Route path="/self-check" component={SelfCheckScreen} />
      <Route path="/check-in" component={CheckInScreen} />
      <Route path="/compare/:id/:other">
        {({ id, other }) => <CompareScreen id={id} other={other} key={`${id} ${other}`} />}
      </Route>
      <Route>
        <Page className="not-found" title={app.notFound} back="/">
          {null}
        </Page>
      </Route>
    </Switch>
  );
}

/** All screens, told apart by the part of the address after the #, so that they work from any static folder. */
export function App() {
  const missing = useServices().missing();
  if (missing.length > 0) return <UnsupportedScreen missing={missing} />;
  return (
    <Router hook={useHashLocation}>
      <LockGate>
        <DueWatcher />
        <Screens />
      </LockGate>
    </Router>
  );
}
