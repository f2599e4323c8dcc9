// @vitest-environment jsdom
/** What a set writes and announces stands long enough to be read, and no more often than it changes. */
import { cleanup } from '@testing-library/react';
import { afterEach, expect, test, vi } from 'vitest';
import { captionBeside, captionMs, EACH_WORD_MS, isCaptionOver, LEAST_MS } from '../../src/screens/set/caption-time.ts';
import { deg, ms } from '../../src/units.ts';
import { aView } from './fake-run.ts';
import { CAMERA, counting, PLAN, shownSet } from './shown-set.tsx';

afterEach(cleanup);

test('a caption stands as long as it takes to read it, then goes', () => {
  const set = shownSet(PLAN);
  set.after(
    () => counting(set),
    () => set.hooks.onEvent({ kind: 'found' }),
  );
  const caption = () => set.container.querySelector('.set-caption')?.textContent;
  set.world.nowMs += LEAST_MS - 500;
  set.after(() => counting(set));
  expect(caption()).toBe('I see you again.');
  set.world.nowMs += 500;
  set.after(() => counting(set));
  expect(caption()).toBeUndefined();
  const long = 'one two three four five six seven eight nine ten';
  expect(captionMs(long)).toBe(10 * EACH_WORD_MS);
  expect(isCaptionOver({ text: long, sinceMs: ms(0) }, ms(10 * EACH_WORD_MS - 1))).toBe(false);
});

test.each([
  ['Ready. Begin when you like. To stop, press the space bar.', 'Ready. Begin when you like.', 'To stop, press the space bar.'],
  ['I can’t see your leg.', 'I can’t see your leg. Your count is kept.', ''],
  ['7. A little less far.', 'A little less far.', ''],
  ['I see you again.', 'Counting', 'I see you again.'],
])('%j beside %j: %j', (said, shown, beside) => {
  expect(captionBeside(said, shown)).toBe(beside);
});

test('what is read aloud by itself changes once for each count and each state, however many pictures come between', () => {
  const set = shownSet(PLAN);
  const live = [...set.container.querySelectorAll('[aria-live="polite"], [role="status"], [role="alert"]')];
  expect(live.length).toBe(3);
  const seen = new MutationObserver(() => undefined);
  seen.observe(set.container, { subtree: true, childList: true, characterData: true });
  const readAloud: string[] = [];
  for (let frame = 0; frame < 300; frame += 1) {
    set.after(() => set.hooks.onView(aView({ count: Math.floor(frame / 100), angleDeg: deg(frame % 30), heldMs: ms(frame) })));
    const changed = seen.takeRecords().map(({ target }) => live.find((each) => each.contains(target))?.textContent);
    readAloud.push(...new Set(changed.filter((text) => text !== undefined)));
  }
  seen.disconnect();
  expect(readAloud.toSorted()).toEqual(['Count 1 of 3', 'Count 2 of 3', 'Counting', 'Ready. Begin when you like.']);
});

test('a hold is drawn second by second for whom motion disturbs, and smoothly otherwise', () => {
  const widths = (lessMotion: boolean) => {
    vi.stubGlobal('matchMedia', () => ({ matches: lessMotion }));
    const set = shownSet(CAMERA);
    set.after(() => set.hooks.onView(aView({ count: 1, heldMs: ms(0) })));
    const seen = [300, 900, 1100, 1900, 2000].map((heldMs) => {
      set.after(() => set.hooks.onView(aView({ count: 1, heldMs: ms(heldMs) })));
      return Math.round(Number.parseFloat(set.container.querySelector<HTMLElement>('.hold-way span')?.style.inlineSize ?? ''));
    });
    cleanup();
    return seen;
  };
  expect(widths(true)).toEqual([0, 0, 50, 50, 100]);
  expect(widths(false)).toEqual([15, 45, 55, 95, 100]);
  vi.unstubAllGlobals();
});
