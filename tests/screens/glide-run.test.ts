import { describe, expect, test } from 'vitest';
import type { GlideCycle, GlidePattern } from '../../src/reps/glide-coordination.ts';
import { EXAMPLE_PLAN } from '../../src/screens/choose/plan.ts';
import { deg, ms } from '../../src/units.ts';
import { aView, fakeRun } from './fake-run.ts';
import { fakeServices } from './fake-services.ts';
import { aRep } from './fake-sets.ts';

const OPENED = { size: { width: 1280, height: 720 }, durationMs: null, preview: null };

const aCycle = (pattern: GlidePattern, reason: GlideCycle['reason'] = null): GlideCycle => ({
  startMs: ms(0),
  endMs: ms(4000),
  pattern,
  phaseDeg: pattern === 'unclear' ? null : deg(pattern === 'slide' ? 5 : 175),
  certainty: pattern === 'unclear' ? 0 : 0.99,
  footRangeDeg: deg(30),
  headRangeDeg: deg(25),
  reason,
});

/** Ten glides in front of the camera, ready to begin. */
function readyGlides() {
  const fake = fakeServices();
  const driver = fakeRun(fake.services);
  driver.run.begin({
    ...EXAMPLE_PLAN,
    exercise: 'nerve-glide',
    targetReps: 10,
    pictures: { kind: 'camera', deviceId: null },
    guide: { target: { kind: 'symptoms' }, holdS: 0, tempoS: 4 },
  });
  const [set] = fake.begun;
  if (!set) throw new Error('begin requires a set to be run, got none');
  set.hooks.onOpened(OPENED);
  set.hooks.onEvent({ kind: 'ready' });
  set.hooks.onView(aView());
  const cycle = (n: number, pattern: GlidePattern) => {
    set.hooks.onEvent({ kind: 'rep', rep: aRep(n) });
    set.hooks.onEvent({ kind: 'glide', cycle: aCycle(pattern) });
    set.hooks.onView(aView({ count: n }));
  };
  return { ...driver, set, cycle, shown: () => driver.run.state.getState() };
}

describe('a set of nerve glides', () => {
  test('announces what the signal means before it begins', () => {
    const { said } = readyGlides();
    expect(said).toEqual([
      'Ready. Begin when you like. If symptoms rise, raise a hand or press the space bar. Then the set ends.',
    ]);
  });

  test('that slides is counted aloud and nothing else is said', () => {
    const { said, cycle, shown } = readyGlides();
    for (let n = 1; n <= 3; n += 1) cycle(n, 'slide');
    expect(said.slice(1)).toEqual(['1', '2', '3']);
    expect(shown().glideCycles.map(({ pattern }) => pattern)).toEqual(['slide', 'slide', 'slide']);
    expect(shown().glideNote).toBeNull();
  });

  test('says once that it is the other way round; the sentence stands for a while and goes', () => {
    const { said, cycle, set, world, shown } = readyGlides();
    cycle(1, 'tension');
    cycle(2, 'tension');
    world.nowMs = 8000;
    set.hooks.onEvent({ kind: 'glide-wrong' });
    expect(said.slice(1)).toEqual(['1', '2', 'When you point the foot, lift the head.']);
    expect(shown().glideNote).toEqual({ what: 'wrong', sinceMs: 8000 });
    world.nowMs = 15_900;
    set.hooks.onView(aView({ count: 2 }));
    expect(shown().glideNote).not.toBeNull();
    world.nowMs = 16_000;
    set.hooks.onView(aView({ count: 2 }));
    expect(shown().glideNote).toBeNull();
  });

  test.each([
    ['head-still', 'I do not see your head move. Lift it when you point the foot.'],
    ['foot-still', 'I do not see your foot move. Point it when you lift the head.'],
    ['head-hidden', 'I can’t see your head. Clear the view to it.'],
    ['foot-hidden', 'I can’t see your foot. Clear the view to it.'],
    ['head-seldom', 'I see your head too seldom. More light helps, and closing other programs.'],
  ] as const)('names its trouble: %s', (what, sentence) => {
    const { said, set, shown } = readyGlides();
    set.hooks.onEvent({ kind: 'glide-trouble', what });
    expect(said.at(-1)).toBe(sentence);
    expect(shown().glideNote?.what).toBe(what);
  });

  test('ends when the leg has risen above its limit, says why and what to do', () => {
    const { said, played, set, cycle, shown } = readyGlides();
    cycle(1, 'slide');
    set.hooks.onEvent({ kind: 'ended', why: 'above-limit' });
    expect(said.at(-1)).toBe(
      'The set ends: your leg rose above its limit. Lower it and rest. If symptoms stay up, tell your therapist.',
    );
    expect(played.at(-1)).toBe('ended');
    expect(shown()).toMatchObject({ stage: 'ended', endedWhy: 'above-limit' });
  });

  test.each(['a raised hand', 'the space bar or the big button'])('ends because symptoms rise at %s, told once', (by) => {
    const { said, run, set, cycle, shown } = readyGlides();
    cycle(1, 'slide');
    if (by === 'a raised hand') set.hooks.onEvent({ kind: 'hand' });
    else run.signal();
    expect(set).toMatchObject({ onsets: 1, stopped: true });
    expect(shown()).toMatchObject({ stage: 'ended', endedWhy: 'symptoms', count: 1 });
    // Should the measurement end it for the same reason meanwhile, nothing is said twice.
    set.hooks.onEvent({ kind: 'ended', why: 'symptoms' });
    expect(said.slice(2)).toEqual([
      'The set ends because symptoms rise. Lower the leg and rest. If they stay up, tell your therapist.',
    ]);
  });

  test('that is only being set up is stopped by the signal, without a word of symptoms', () => {
    const { said, run, set, shown } = readyGlides();
    set.hooks.onView(aView({ phase: 'setting-up' }));
    run.signal();
    expect(set).toMatchObject({ onsets: 0, stopped: true });
    expect(shown().endedWhy).toBeNull();
    expect(said).toHaveLength(1);
  });
});
