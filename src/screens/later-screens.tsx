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

export const CompareScreen = later(async () => (await import('./compare/compare-screen.tsx')).CompareScreen);
export const DeskScreen = later(async () => (await import('./desk/desk-screen.tsx')).DeskScreen);
export const GiveScreen = later(async () => (await import('./hand-over/give-screen.tsx')).GiveScreen);
export const NewPersonScreen = later(async () => (await import('./people/new-person-screen.tsx')).NewPersonScreen);
export const PeopleScreen = later(async () => (await import('./people/people-screen.tsx')).PeopleScreen);
export const PersonScreen = later(async () => (await import('./people/person-screen.tsx')).PersonScreen);
export const PlanScreen = later(async () => (await import('./plan/plan-screen.tsx')).PlanScreen);
export const ProgressScreen = later(async () => (await import('./progress/progress-screen.tsx')).ProgressScreen);
export const ReportScreen = later(async () => (await import('./report/report-screen.tsx')).ReportScreen);
export const ReviewScreen = later(async () => (await import('./review/review-screen.tsx')).ReviewScreen);
export const TakeScreen = later(async () => (await import('./hand-over/take-screen.tsx')).TakeScreen);
