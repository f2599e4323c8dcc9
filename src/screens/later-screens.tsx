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

/** A screen that is loaded when it is first opened: what draws charts is no part of the first load. */
const later = (load: () => Promise<ComponentType>) =>
  lazy(async (): Promise<{ readonly default: ComponentType }> => ({ default: await load().catch(() => NotLoaded) }));

export const ProgressScreen = later(async () => (await import('./progress/progress-screen.tsx')).ProgressScreen);
export const ReportScreen = later(async () => (await import('./report/report-screen.tsx')).ReportScreen);
export const ReviewScreen = later(async () => (await import('./review/review-screen.tsx')).ReviewScreen);
