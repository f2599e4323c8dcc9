// @vitest-environment jsdom
/** Who does not hear reads the same: each sentence that a set says stands on its screen, for as long as it takes to read it. */
import { act, cleanup, render } from '@testing-library/react';
import { afterEach, expect, test, vi } from 'vitest';
import type { ViewAdvice } from '../../src/measure/live-view.ts';
import { EXAMPLE_PLAN } from '../../src/screens/choose/plan.ts';
import type { SetPlan } from '../../src/screens/services.ts';
import { ADVICE_SIGN } from '../../src/screens/set/advice-sign.ts';
import { Caption } from '../../src/screens/set/caption.tsx';
import { captionBeside, captionMs, EACH_WORD_MS, isCaptionOver, LEAST_MS } from '../../src/screens/set/caption-time.ts';
import { CountRing } from '../../src/screens/set/count-ring.tsx';
import { Cue } from '../../src/screens/set/cue.tsx';
import { PhaseBanner } from '../../src/screens/set/phase-banner.tsx';
import { RunContext } from '../../src/screens/set/run-context.tsx';
import { SoundsContext } from '../../src/screens/set/sounds-context.tsx';
import { deg, ms } from '../../src/units.ts';
import { aView, fakeRun } from './fake-run.ts';
import { fakeServices } from './fake-services.ts';
import { aRep } from './fake-sets.ts';

afterEach(cleanup);

const PLAN: SetPlan = { ...EXAMPLE_PLAN, targetReps: 3, guide: { ...EXAMPLE_PLAN.guide, holdS: 2 } };
const CAMERA: SetPlan = { ...PLAN, pictures: { kind: 'camera', deviceId: null } };
const RAISE: SetPlan = { ...CAMERA, exercise: 'leg-raise', guide: { ...CAMERA.guide, target: { kind: 'symptoms' } } };
const ADVICE = Object.keys(ADVICE_SIGN) as readonly ViewAdvice[];

/** A set whose screen's words are shown, and what it says. */
function shownSet(plan: SetPlan) {
  const fake = fakeServices();
  const driver = fakeRun(fake.services);
  const { container } = render(
    <SoundsContext value={driver.sounds}>
      <RunContext value={driver.run}>
        <PhaseBanner />
        <Caption />
        <CountRing />
        <Cue guide={plan.guide} />
      </RunContext>
    </SoundsContext>,
  );
  act(() => driver.run.begin(plan));
  const [set] = fake.begun;
  if (!set) throw new Error('begin requires a set to be run, got none');
  const { hooks } = set;
  const after = (...steps: readonly (() => void)[]) => {
    for (const step of steps) {
      act(step);
      driver.world.nowMs += 100;
    }
  };
  return { ...driver, hooks, container, after };
}

type ShownSet = ReturnType<typeof shownSet>;

/** Each sentence of what was said last stands on the screen; a number alone as the count. */
function expectWritten({ said, container }: ShownSet): void {
  const last = said.at(-1) ?? '';
  expect(last).not.toBe('');
  const shown = container.textContent ?? '';
  for (const sentence of last.split(/(?<=[.!?])\s+/)) expect(shown, `“${last}”`).toContain(sentence.replace(/\.$/, ''));
}

const counting = (s: ShownSet, count = 1) => s.hooks.onView(aView({ count }));
const rep = (s: ShownSet, number: number, change: Parameters<typeof aRep>[1]) =>
  s.hooks.onEvent({ kind: 'rep', rep: aRep(number, change) });

test.each<readonly [string, SetPlan, (s: ShownSet) => void]>([
  [
    'being ready',
    PLAN,
    (s) =>
      s.after(
        () => s.hooks.onView(aView()),
        () => s.hooks.onEvent({ kind: 'ready' }),
      ),
  ],
  [
    'being ready, with a camera',
    CAMERA,
    (s) =>
      s.after(
        () => s.hooks.onView(aView()),
        () => s.hooks.onEvent({ kind: 'ready' }),
      ),
  ],
  [
    'being ready, of a leg raise',
    RAISE,
    (s) =>
      s.after(
        () => s.hooks.onView(aView()),
        () => s.hooks.onEvent({ kind: 'ready' }),
      ),
  ],
  [
    'a count',
    PLAN,
    (s) =>
      s.after(
        () => counting(s),
        () => rep(s, 1, { complete: true }),
      ),
  ],
  [
    'a small one',
    PLAN,
    (s) =>
      s.after(
        () => s.hooks.onView(aView({ partialCount: 1 })),
        () => rep(s, 1, { complete: false }),
      ),
  ],
  [
    'the whole dose',
    { ...PLAN, targetReps: 1 },
    (s) =>
      s.after(
        () => counting(s),
        () => rep(s, 1, { complete: true }),
      ),
  ],
  [
    'too far',
    PLAN,
    (s) =>
      s.after(
        () => counting(s),
        () => rep(s, 1, { complete: true, flags: ['past-onset'] }),
      ),
  ],
  [
    'the leg lost',
    PLAN,
    (s) =>
      s.after(
        () => s.hooks.onView(aView({ phase: 'lost', count: 1 })),
        () => s.hooks.onEvent({ kind: 'lost' }),
      ),
  ],
  [
    'the leg found',
    PLAN,
    (s) =>
      s.after(
        () => counting(s),
        () => s.hooks.onEvent({ kind: 'found' }),
      ),
  ],
  [
    'stickers lost',
    { ...CAMERA, exercise: 'toe-lift' },
    (s) =>
      s.after(
        () => s.hooks.onView(aView({ phase: 'lost', count: 1 })),
        () => s.hooks.onEvent({ kind: 'lost' }),
      ),
  ],
  [
    'stickers found',
    { ...CAMERA, exercise: 'toe-lift' },
    (s) =>
      s.after(
        () => counting(s),
        () => s.hooks.onEvent({ kind: 'found' }),
      ),
  ],
  [
    'a raised hand',
    CAMERA,
    (s) =>
      s.after(
        () => counting(s),
        () => s.hooks.onEvent({ kind: 'hand' }),
      ),
  ],
  [
    'the start of symptoms',
    RAISE,
    (s) =>
      s.after(
        () => counting(s),
        () => s.run.signal(),
      ),
  ],
  [
    'a hold that is done',
    PLAN,
    (s) =>
      s.after(
        () => s.hooks.onView(aView({ count: 1, heldMs: ms(500) })),
        () => s.hooks.onView(aView({ count: 1, heldMs: ms(2100) })),
      ),
  ],
  [
    'a glide the wrong way',
    { ...CAMERA, exercise: 'nerve-glide' },
    (s) =>
      s.after(
        () => counting(s),
        () => s.hooks.onEvent({ kind: 'glide-wrong' }),
      ),
  ],
  ...(['head-still', 'foot-still', 'head-hidden', 'foot-hidden'] as const).map(
    (what) =>
      [
        `glides: ${what}`,
        { ...CAMERA, exercise: 'nerve-glide' },
        (s: ShownSet) =>
          s.after(
            () => counting(s),
            () => s.hooks.onEvent({ kind: 'glide-trouble', what }),
          ),
      ] as const,
  ),
  ...(['left', 'target-reached', 'above-limit', 'symptoms'] as const).map(
    (why) =>
      [
        `the end: ${why}`,
        PLAN,
        (s: ShownSet) =>
          s.after(
            () => counting(s, 3),
            () => s.hooks.onEvent({ kind: 'ended', why }),
          ),
      ] as const,
  ),
  ...ADVICE.map(
    (advice) =>
      [
        `advice: ${advice}`,
        PLAN,
        (s: ShownSet) => {
          const view = () => s.hooks.onView(aView({ phase: 'setting-up', advice: [advice] }));
          s.after(view, () => {
            s.world.nowMs += 2000;
            view();
          });
        },
      ] as const,
  ),
])('%s: what is said is written', (_what, plan, happens) => {
  const set = shownSet(plan);
  happens(set);
  expectWritten(set);
});

test('with the sound off the same is written', () => {
  const set = shownSet(PLAN);
  set.world.soundOn = false;
  set.after(
    () => counting(set),
    () => set.hooks.onEvent({ kind: 'found' }),
  );
  expect(set.said).toEqual([]);
  expect(set.container.textContent).toContain('I see you again.');
});

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
