import type { Page } from 'playwright-core';

/** Pictures in a row that look the same. Chosen: a chart follows the width of its place within two. */
const SAME_FRAMES = 3;
/** What never stands still, as a set that runs, is looked at after this many. */
const MOST_FRAMES = 60;

/** Comes when what is on the page has kept its place for some pictures: it was resized, unfolded or turned before. */
export const settled = (page: Page): Promise<void> =>
  page.evaluate(
    ([wanted, most]) =>
      new Promise<void>((done) => {
        const shape = () => {
          const { scrollWidth, scrollHeight } = document.documentElement;
          const drawings = [...document.querySelectorAll('svg, canvas')].map((each) => each.getBoundingClientRect().width);
          return `${scrollWidth} ${scrollHeight} ${document.body.textContent.length} ${drawings}`;
        };
        // A chart that is still as wide as its place was before: on a busy machine it follows later.
        const follows = () =>
          [...document.querySelectorAll('svg')].every(
            (each) => each.clientWidth <= (each.parentElement?.clientWidth || Number.POSITIVE_INFINITY) + 1,
          );
        let before = '';
        let same = 0;
        let seen = 0;
        requestAnimationFrame(function look() {
          const now = shape();
          same = now === before && follows() ? same + 1 : 0;
          before = now;
          seen += 1;
          if (same >= wanted || seen >= most) done();
          else requestAnimationFrame(look);
        });
      }),
    [SAME_FRAMES, MOST_FRAMES] as const,
  );
