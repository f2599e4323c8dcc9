import { type ReactNode, Suspense, useEffect } from 'react';
import { Redirect, Route, Switch, useLocation } from 'wouter';
import {
  AfterScreen,
  AskScreen,
  BeforeScreen,
  BringScreen,
  ByHandScreen,
  CheckInScreen,
  ChooseScreen,
  CompareScreen,
  DeskScreen,
  FreeByHandScreen,
  GiveScreen,
  GoScreen,
  PlanScreen,
  ProgressScreen,
  QuestionsScreen,
  ReportScreen,
  ResultScreen,
  ReviewScreen,
  SafetyScreen,
  SelfCheckScreen,
  SendScreen,
  ServerScreen,
  SetScreen,
  StickerScreen,
  TakeScreen,
  TodayScreen,
} from './later-screens.tsx';
import { Page } from './parts/page.tsx';
import { useRun } from './set/run-context.tsx';
import { useWords } from './words/words-context.tsx';

/** The screens of one person, told apart by their addresses. */
export function PersonScreens({ home }: { readonly home: ReactNode }) {
  const run = useRun();
  const [location] = useLocation();
  const { app } = useWords();
  // A set runs on its own screen only: whoever goes elsewhere has ended it.
  useEffect(() => {
    if (location !== '/run') run.leave();
  }, [location, run]);
  // Around the screens alone: a set is left, and its camera off, before the next screen is loaded.
  return (
    <Suspense fallback={<p className="heard">{app.loading}</p>}>
      <Switch>
        <Route path="/">{home}</Route>
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
        <Route path="/stickers" component={StickerScreen} />
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
        <Route path="/desk" component={DeskScreen} />
        <Route path="/progress" component={ProgressScreen} />
        <Route path="/report" component={ReportScreen} />
        <Route path="/send" component={SendScreen} />
        <Route path="/server" component={ServerScreen} />
        <Route path="/bring">
          <BringScreen />
        </Route>
        <Route path="/review" component={ReviewScreen} />
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
    </Suspense>
  );
}
