import { type ComponentType, lazy } from 'react';
import { Page } from './parts/page.tsx';
import { useWords } from './words/words-context.tsx';

/** What stands where a screen would that could not be loaded: the page was updated meanwhile, or its server is gone. */
function NotLoaded() {
  const { problems } = useWords();
  const { title, todo } = problems.unexpected('');
  return (
    <Page className="not-found" title={title} lead={todo} back="/">
      {null}
    </Page>
  );
}

/** A screen that is loaded when it is first opened: what only some need is no part of the first load. */
const later = <P extends object>(load: () => Promise<ComponentType<P>>) =>
  lazy(async (): Promise<{ readonly default: ComponentType<P> }> => ({ default: await load().catch(() => NotLoaded) }));

/** What shows nothing until it has something to tell: where it can't be loaded there is nothing. */
const laterUnseen = (load: () => Promise<ComponentType>) =>
  lazy(async (): Promise<{ readonly default: ComponentType }> => ({ default: await load().catch(() => () => null) }));

/** Comes when the page and all that its first screen needs are there, and nothing else waits. */
const pageStands = () =>
  new Promise<void>((resolve) => {
    const rest = () => ('requestIdleCallback' in window ? requestIdleCallback(() => resolve()) : setTimeout(resolve));
    if (document.readyState === 'complete') rest();
    else window.addEventListener('load', rest, { once: true });
  });

export const AfterScreen = later(async () => (await import('./feel/after-screen.tsx')).AfterScreen);
export const AskScreen = later(async () => (await import('./day/ask-screen.tsx')).AskScreen);
export const BringScreen = later(async () => (await import('./record/bring-screen.tsx')).BringScreen);
export const BeforeScreen = later(async () => (await import('./feel/before-screen.tsx')).BeforeScreen);
export const ByHandScreen = later(async () => (await import('./day/by-hand-screen.tsx')).ByHandScreen);
export const CheckInScreen = later(async () => (await import('./feel/check-in-screen.tsx')).CheckInScreen);
export const ChooseScreen = later(async () => (await import('./choose/choose-screen.tsx')).ChooseScreen);
export const CompareScreen = later(async () => (await import('./compare/compare-screen.tsx')).CompareScreen);
export const DeskScreen = later(async () => (await import('./desk/desk-screen.tsx')).DeskScreen);
/** Shows nothing. */
export const DueWatcher = laterUnseen(async () => (await import('./day/due-watcher.tsx')).DueWatcher);
export const ErasedScreen = later(async () => (await import('./lock/erased-screen.tsx')).ErasedScreen);
export const FreeByHandScreen = later(async () => (await import('./day/by-hand-screen.tsx')).FreeByHandScreen);
export const GiveScreen = later(async () => (await import('./hand-over/give-screen.tsx')).GiveScreen);
export const GoScreen = later(async () => (await import('./day/go-screen.tsx')).GoScreen);
export const LockScreen = later(async () => (await import('./lock/lock-screen.tsx')).LockScreen);
export const NewPersonScreen = later(async () => (await import('./people/new-person-screen.tsx')).NewPersonScreen);
export const PeopleScreen = later(async () => (await import('./people/people-screen.tsx')).PeopleScreen);
export const PersonScreen = later(async () => (await import('./people/person-screen.tsx')).PersonScreen);
export const PlanScreen = later(async () => (await import('./plan/plan-screen.tsx')).PlanScreen);
export const ProgressScreen = later(async () => (await import('./progress/progress-screen.tsx')).ProgressScreen);
export const QuestionsScreen = later(async () => (await import('./day/questions-screen.tsx')).QuestionsScreen);
export const ReportScreen = later(async () => (await import('./report/report-screen.tsx')).ReportScreen);
export const ResultScreen = later(async () => (await import('./result/result-screen.tsx')).ResultScreen);
export const ReviewScreen = later(async () => (await import('./review/review-screen.tsx')).ReviewScreen);
export const SafetyScreen = later(async () => (await import('./safety/safety-screen.tsx')).SafetyScreen);
export const SelfCheckScreen = later(async () => (await import('./check/self-check-screen.tsx')).SelfCheckScreen);
export const SendScreen = later(async () => (await import('./record/send-screen.tsx')).SendScreen);
export const ServerScreen = later(async () => (await import('./server/server-screen.tsx')).ServerScreen);
/** Sends by itself what is new, if the person chose that. */
export const ServerWatch = laterUnseen(async () => {
  await pageStands();
  return (await import('./server/server-watch.tsx')).ServerWatch;
});
export const SetScreen = later(async () => (await import('./set/set-screen.tsx')).SetScreen);
/** Keeps the site for the time without a network, once the page stands. */
export const SiteWatch = laterUnseen(async () => {
  await pageStands();
  return (await import('./offline/site-watch.tsx')).SiteWatch;
});
export const StoredLink = laterUnseen(async () => (await import('./stored/stored-link.tsx')).StoredLink);
export const StoredScreen = later(async () => (await import('./stored/stored-screen.tsx')).StoredScreen);
export const StickerScreen = later(async () => (await import('./stickers/sticker-screen.tsx')).StickerScreen);
export const TakeScreen = later(async () => (await import('./hand-over/take-screen.tsx')).TakeScreen);
export const TodayScreen = later(async () => (await import('./day/today-screen.tsx')).TodayScreen);
export const UnlockScreen = later(async () => (await import('./lock/unlock-screen.tsx')).UnlockScreen);
