import { describe, expect, test } from 'vitest';
import type { Target } from '../../src/dose/prescribed-exercise.ts';
import { fail, ok } from '../../src/result.ts';
import { EXAMPLE_PLAN } from '../../src/screens/choose/plan.ts';
import { deg, ms } from '../../src/units.ts';
import { aView, fakeRun } from './fake-run.ts';
import type { DrivenSet } from './fake-services.ts';
import { fakeServices } from './fake-services.ts';
import { aRep, aSet } from './fake-sets.ts';

/** The example with a dose of its own, so that the example's length may change. */
const PLAN = { ...EXAMPLE_PLAN, targetReps: 8 };

const OPENED = { size: { width: 640, height: 480 }, durationMs: ms(12_000), preview: null };

function begun() {
  const fake = fakeServices();
  const driver = fakeRun(fake.services);
  driver.run.begin(PLAN);
  const [set] = fake.begun;
  if (!set) throw new Error('begin requires a set to be run, got none');
  return { ...driver, set, all: fake.begun };
}

const stageOf = (run: ReturnType<typeof begun>['run']) => run.state.getState().stage;
const rep = (set: DrivenSet, number: number, complete: boolean) =>
  set.hooks.onEvent({ kind: 'rep', rep: aRep(number, { complete }) });

describe('the stages of a set', () => {
  test('a set opens, is set up, is ready, counts, is lost and found, and ends', async () => {
    const { run, set } = begun();
    expect(stageOf(run)).toBe('opening');
    set.hooks.onOpened(OPENED);
    set.hooks.onView(aView({ phase: 'setting-up', advice: ['too-near', 'hold-still'] }));
    expect(run.state.getState()).toMatchObject({ stage: 'setting-up', advice: 'too-near' });
    set.hooks.onView(aView());
    expect(stageOf(run)).toBe('ready');
    set.hooks.onView(aView({ count: 1 }));
    expect(run.state.getState()).toMatchObject({ stage: 'counting', count: 1, advice: null });
    set.hooks.onView(aView({ phase: 'lost', count: 1 }));
    expect(run.state.getState()).toMatchObject({ stage: 'lost', count: 1 });
    set.hooks.onView(aView({ count: 1, partialCount: 1 }));
    expect(run.state.getState()).toMatchObject({ stage: 'counting', count: 1, partialCount: 1 });
    set.hooks.onEvent({ kind: 'ended', why: 'target-reached' });
    expect(run.state.getState()).toMatchObject({ stage: 'ended', endedWhy: 'target-reached', finishedId: null });
    await set.end(ok(aSet([aRep(1)])));
    expect(run.state.getState().finishedId).toBe('set-1');
  });

  test('only a small movement so far is counting, not being ready', () => {
    const { run, set } = begun();
    set.hooks.onView(aView({ partialCount: 1 }));
    expect(stageOf(run)).toBe('counting');
  });

  test('a view that comes after the end does not bring the set back', () => {
    const { run, set } = begun();
    set.hooks.onEvent({ kind: 'ended', why: 'left' });
    set.hooks.onView(aView({ phase: 'lost' }));
    expect(stageOf(run)).toBe('ended');
  });

  test('a set that fails shows why, and can be begun again with the same plan', async () => {
    const { run, set, all } = begun();
    await set.end(fail({ kind: 'camera-denied', detail: 'person' }));
    expect(run.state.getState()).toMatchObject({ stage: 'failed', problem: { kind: 'camera-denied' }, plan: PLAN });
    run.begin(PLAN);
    expect(run.state.getState()).toMatchObject({ stage: 'opening', problem: null });
    expect(all).toHaveLength(2);
  });

  test('a fault of the program becomes a sentence too', async () => {
    const fake = fakeServices([], {
      runSet: () => ({
        done: Promise.reject(new Error('a fault')),
        stop: () => undefined,
        markOnset: () => undefined,
        goOn: () => undefined,
      }),
    });
    const { run, faults } = fakeRun(fake.services);
    run.begin(PLAN);
    await new Promise((resolve) => setTimeout(resolve));
    expect(run.state.getState()).toMatchObject({ stage: 'failed', problem: { kind: 'unexpected' } });
    expect(faults).toEqual([new Error('a fault')]);
  });

  test('stopping before there is a picture leaves no set behind', () => {
    const { run, set } = begun();
    run.stop();
    expect(set.stopped).toBe(true);
    expect(run.state.getState()).toMatchObject({ stage: 'idle', plan: null });
  });

  test('stopping a counted set waits for its result', async () => {
    const { run, set } = begun();
    set.hooks.onOpened(OPENED);
    set.hooks.onView(aView({ count: 2 }));
    run.stop();
    expect(set.stopped).toBe(true);
    expect(run.state.getState()).toMatchObject({ stage: 'ended', count: 2, finishedId: null });
    await set.end(ok(aSet([aRep(1), aRep(2)])));
    expect(run.state.getState().finishedId).toBe('set-1');
  });

  test('a set begun over another stops it and hears nothing of it any more', async () => {
    const { run, set, all } = begun();
    run.begin({ ...PLAN, side: 'right' });
    expect(set.stopped).toBe(true);
    set.hooks.onView(aView({ count: 7 }));
    await set.end(ok(aSet([aRep(1)])));
    expect(run.state.getState()).toMatchObject({ stage: 'opening', count: 0, finishedId: null });
    all[1]?.hooks.onView(aView({ count: 1 }));
    expect(run.state.getState().count).toBe(1);
  });

  test('that nothing can be written is shown until something is, whatever is counted meanwhile, and said once', () => {
    const { run, set, said } = begun();
    const shown = () => run.state.getState().storeTrouble;
    set.hooks.onStoreTrouble('store-full');
    rep(set, 1, true);
    rep(set, 2, true);
    expect(shown()).toBe('full');
    set.hooks.onStoreTrouble(null);
    expect(shown()).toBeNull();
    set.hooks.onStoreTrouble('store-failed');
    expect(shown()).toBe('failed');
    const sentences = said.filter((text) => /store/.test(text));
    expect(sentences).toEqual(['No room to store this set. Go on, and save it as a file at the end.']);
    expect(run.state.getState().caption?.text).toBe(sentences[0]);
  });

  test('a disk that is only late is shown and not talked about', () => {
    const { run, set, said } = begun();
    set.hooks.onStoreTrouble('store-stalled');
    expect(run.state.getState().storeTrouble).toBe('late');
    expect(said).toEqual([]);
  });

  test('a view without news does not touch the state that React follows', () => {
    const { run, set } = begun();
    set.hooks.onView(aView({ count: 1 }));
    const before = run.state.getState();
    set.hooks.onView(aView({ count: 1 }));
    expect(run.state.getState()).toBe(before);
  });
});

describe('what is heard of a set', () => {
  test('complete repetitions are counted aloud, small ones are not', () => {
    const { set, said, played } = begun();
    set.hooks.onEvent({ kind: 'ready' });
    rep(set, 1, true);
    rep(set, 2, false);
    rep(set, 3, true);
    set.hooks.onEvent({ kind: 'ended', why: 'target-reached' });
    expect(said).toEqual([
      'Ready. Begin when you like. To stop, press the space bar.',
      '1',
      'small one',
      '2',
      'Done. 2 repetitions.',
    ]);
    expect(played).toEqual(['ready', 'complete', 'partial', 'complete', 'ended']);
  });

  test('the last repetition of the dose says that it is the last; more are counted all the same', () => {
    const { set, said } = begun();
    for (let number = 1; number <= 9; number += 1) rep(set, number, true);
    expect(said.slice(6)).toEqual(['7', 'That’s all 8. You can rest.', '9']);
  });

  test('with the sound off nothing is heard', () => {
    const { set, said, played, world } = begun();
    world.soundOn = false;
    set.hooks.onEvent({ kind: 'ready' });
    rep(set, 1, true);
    expect([...said, ...played]).toEqual([]);
  });

  test('an advice is spoken once it has stood for a moment, and again only much later', () => {
    const { set, said, world } = begun();
    const at = (nowMs: number) => {
      world.nowMs = nowMs;
      set.hooks.onView(aView({ phase: 'setting-up', advice: ['too-dark'] }));
    };
    at(0);
    at(1000);
    expect(said).toEqual([]);
    at(1600);
    at(3000);
    expect(said).toEqual(['Too dark. Turn on a light.']);
    at(14_000);
    expect(said).toHaveLength(2);
  });

  test('an advice that flickers is not spoken', () => {
    const { set, said, world } = begun();
    for (let i = 0; i < 20; i += 1) {
      world.nowMs = i * 500;
      set.hooks.onView(aView({ phase: 'setting-up', advice: [i % 2 === 0 ? 'too-near' : 'too-far'] }));
    }
    expect(said).toEqual([]);
  });
});

/** A set with the camera, ready to begin. */
function withCamera(exercise: 'foot-tap' | 'leg-raise', kind: Target['kind'] = exercise === 'leg-raise' ? 'symptoms' : 'full') {
  const fake = fakeServices();
  const driver = fakeRun(fake.services);
  const target: Target = kind === 'range' ? { kind, fromDeg: deg(30), toDeg: deg(40) } : { kind };
  const guide = { target, holdS: 0, tempoS: null };
  driver.run.begin({ ...PLAN, exercise, guide, pictures: { kind: 'camera', deviceId: null } });
  const [set] = fake.begun;
  if (!set) throw new Error('begin requires a set to be run, got none');
  set.hooks.onOpened(OPENED);
  set.hooks.onEvent({ kind: 'ready' });
  set.hooks.onView(aView({ count: 1, angleDeg: deg(41) }));
  return { ...driver, set };
}

describe.each([
  { by: 'a raised hand', signal: (of: ReturnType<typeof withCamera>) => of.set.hooks.onEvent({ kind: 'hand' }) },
  { by: 'the space bar or the big button', signal: (of: ReturnType<typeof withCamera>) => of.run.signal() },
])('the announced signal, given by $by', ({ signal }) => {
  test('ends a set of foot taps, as was said before it began', () => {
    const driven = withCamera('foot-tap');
    expect(driven.said).toEqual(['Ready. Begin when you like. To stop, raise a hand or press the space bar.']);
    signal(driven);
    expect(driven.set).toMatchObject({ stopped: true, onsets: 0 });
    expect(stageOf(driven.run)).toBe('ended');
  });

  test('says where symptoms start in a set that goes only that far, and ends it the second time', () => {
    const driven = withCamera('leg-raise');
    expect(driven.said).toEqual(['Ready. Begin when you like. When symptoms start, raise a hand or press the space bar.']);
    signal(driven);
    expect(driven.set).toMatchObject({ stopped: false, onsets: 1 });
    expect(driven.run.state.getState()).toMatchObject({ onsetMarked: true });
    expect(driven.said.at(-1)).toBe('Noted. To stop, raise a hand or press the space bar.');
    signal(driven);
    expect(driven.set).toMatchObject({ stopped: true, onsets: 1 });
  });

  test('ends a leg raise that goes to a range', () => {
    const driven = withCamera('leg-raise', 'range');
    signal(driven);
    expect(driven.set).toMatchObject({ stopped: true, onsets: 0 });
  });

  test('before the set has begun ends it', () => {
    const driven = withCamera('leg-raise');
    driven.set.hooks.onView(aView({ phase: 'setting-up' }));
    signal(driven);
    expect(driven.set).toMatchObject({ stopped: true, onsets: 0 });
  });
});

test('a raised hand in a film does nothing', () => {
  const { run, set } = begun();
  set.hooks.onView(aView({ count: 1 }));
  set.hooks.onEvent({ kind: 'hand' });
  expect(set.stopped).toBe(false);
  expect(stageOf(run)).toBe('counting');
});

describe('a repetition past where symptoms began', () => {
  const tell = (driven: ReturnType<typeof begun>, number: number, complete: boolean, past: boolean) =>
    driven.set.hooks.onEvent({ kind: 'rep', rep: aRep(number, { complete, flags: past ? ['past-onset'] : [] }) });

  test('is counted, and said to be too far', () => {
    const driven = begun();
    tell(driven, 1, true, true);
    expect(driven.run.state.getState().pastOnset).toBe(true);
    tell(driven, 2, true, false);
    expect(driven.said).toEqual(['1. A little less far.', '2']);
    expect(driven.run.state.getState().pastOnset).toBe(false);
  });

  test('is said to be too far also when it is small, or the last of the dose', () => {
    const driven = begun();
    for (let number = 1; number < 8; number += 1) tell(driven, number, true, false);
    tell(driven, 8, false, true);
    tell(driven, 9, true, true);
    expect(driven.said.slice(7)).toEqual(['small one. A little less far.', 'That’s all 8. You can rest. A little less far.']);
  });
});

test('a hold is ticked second by second, and said to be long enough once', () => {
  const fake = fakeServices();
  const { run, said, played } = fakeRun(fake.services);
  run.begin({ ...PLAN, guide: { target: { kind: 'full' }, holdS: 3, tempoS: null } });
  const hold = (heldMs: number | null) => fake.begun[0]?.hooks.onView(aView({ heldMs: heldMs === null ? null : ms(heldMs) }));
  for (const heldMs of [null, 0, 400, 1050, 1100, 2040, 3010, 4100, null, 900, 1010]) hold(heldMs);
  expect(played).toEqual(['second', 'second', 'second']);
  expect(said).toEqual(['And back.']);
});
