// @vitest-environment jsdom
/** Who does not hear reads the same: each sentence that a set says stands on its screen, for as long as it takes to read it. */
import { cleanup } from '@testing-library/react';
import { afterEach, expect, test } from 'vitest';
import type { ViewAdvice } from '../../src/measure/live-view.ts';
import type { SetPlan } from '../../src/screens/services.ts';
import { ADVICE_SIGN } from '../../src/screens/set/advice-sign.ts';
import { ms } from '../../src/units.ts';
import { aView } from './fake-run.ts';
import { aRep } from './fake-sets.ts';
import { CAMERA, counting, PLAN, RAISE, type ShownSet, shownSet } from './shown-set.tsx';

afterEach(cleanup);

const ADVICE = Object.keys(ADVICE_SIGN) as readonly ViewAdvice[];

/** Each sentence of what was said last stands on the screen; a number alone as the count. */
function expectWritten({ said, container }: ShownSet): void {
  const last = said.at(-1) ?? '';
  expect(last).not.toBe('');
  const shown = container.textContent ?? '';
  for (const sentence of last.split(/(?<=[.!?])\s+/)) expect(shown, `“${last}”`).toContain(sentence.replace(/\.$/, ''));
}

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
  ...(['store-full', 'store-failed'] as const).map(
    (kind) =>
      [
        `that it can’t be stored: ${kind}`,
        PLAN,
        (s: ShownSet) =>
          s.after(
            () => counting(s),
            () => s.hooks.onStoreTrouble(kind),
          ),
      ] as const,
  ),
  [
    'the picture that is back',
    CAMERA,
    (s) =>
      s.after(
        () => counting(s),
        () => s.hooks.onAway({ kind: 'camera-lost' }),
        () => s.hooks.onAway(null),
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
  ...(['head-still', 'foot-still', 'head-hidden', 'foot-hidden', 'head-seldom'] as const).map(
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
