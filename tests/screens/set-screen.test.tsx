// @vitest-environment jsdom
import { act, cleanup, fireEvent, screen } from '@testing-library/react';
import { afterEach, beforeEach, describe, expect, test, vi } from 'vitest';
import { fail, ok } from '../../src/result.ts';
import { EXAMPLE_PLAN } from '../../src/screens/choose/plan.ts';
import { deg, ms, px, ratio } from '../../src/units.ts';
import { fakeCanvas } from './fake-canvas.ts';
import { aView } from './fake-run.ts';
import { type DrivenSet, fakeServices } from './fake-services.ts';
import { aRep, aSet } from './fake-sets.ts';
import { press, shownAt } from './shown.tsx';

let written: readonly string[] = [];

beforeEach(() => {
  written = fakeCanvas();
});
afterEach(() => {
  cleanup();
  vi.restoreAllMocks();
});

const OPENED = { size: { width: 640, height: 480 }, durationMs: ms(10_000), preview: null };
const point = { x: px(10), y: px(10) };

async function runningExample() {
  const fake = fakeServices([aSet([aRep(1)])]);
  const shown = shownAt('/', fake.services);
  fireEvent.click(await screen.findByRole('button', { name: /recorded example/ }));
  // Loaded when a set begins.
  await screen.findByRole('heading', { name: 'Foot taps, left leg' });
  const [set] = fake.begun;
  if (!set) throw new Error('the example requires a set to begin, got none');
  await screen.findByRole('heading', { name: 'Foot taps, left leg' });
  const tell = (hook: (set: DrivenSet) => void) => act(() => hook(set));
  tell(({ hooks }) => hooks.onOpened(OPENED));
  return { ...shown, ...fake, set, tell };
}

describe('the screen of a running set', () => {
  test('the example begins with one choice, with its own exercise and side', async () => {
    const { set } = await runningExample();
    expect(set.plan).toMatchObject({ pictures: { kind: 'example' }, exercise: 'foot-tap', side: 'left' });
    expect(screen.getByRole('heading', { name: 'Foot taps, left leg' })).toBeTruthy();
  });

  test('the most urgent advice, then the count against the dose, are shown', async () => {
    const dose = EXAMPLE_PLAN.targetReps ?? 0;
    const { tell } = await runningExample();
    tell(({ hooks }) => hooks.onView(aView({ phase: 'setting-up', advice: ['leg-hidden', 'too-dark'] })));
    expect(screen.getByRole('status').textContent).toBe('Your leg is hidden. Clear the view to it.');
    tell(({ hooks }) => hooks.onView(aView({ count: 3, partialCount: 1 })));
    expect(screen.getByText('3').parentElement?.textContent).toBe(`Count 3 of ${dose}`);
    expect(screen.getByText('1 small one')).toBeTruthy();
    tell(({ hooks }) => hooks.onView(aView({ phase: 'lost', count: 3 })));
    expect(screen.getByRole('status').textContent).toContain('Your count is kept');
    tell(({ hooks }) => hooks.onView(aView({ count: dose })));
    expect(screen.getByRole('status').textContent).toBe(`That’s all ${dose}. You can rest.`);
  });

  test('the angle is written at the joint of the leg, without going through the page', async () => {
    const { tell } = await runningExample();
    const leg = { hip: point, knee: point, ankle: point, heel: point, toe: point };
    tell(({ hooks }) => hooks.onView(aView({ angleDeg: deg(12.4), leg })));
    tell(({ hooks }) => hooks.onView(aView({ angleDeg: deg(-0.3), leg })));
    tell(({ hooks }) => hooks.onView(aView({ angleDeg: null, leg })));
    expect(written).toEqual(['12°', '0°']);
  });

  test('the progress follows the frames', async () => {
    const { tell } = await runningExample();
    tell(({ hooks }) => hooks.onView(aView()));
    const image = { displayWidth: 640, displayHeight: 480 } as VideoFrame;
    tell(({ hooks }) => hooks.onFrame({ tMs: ms(2500), image, turn: 0 }));
    expect(screen.getByText('25% measured')).toBeTruthy();
  });

  test.each([' ', 'Escape'])('the key %j stops the set', async (key) => {
    const { set, tell } = await runningExample();
    tell(({ hooks }) => hooks.onView(aView({ count: 1 })));
    fireEvent.keyDown(document.body, { key });
    expect(set.stopped).toBe(true);
  });

  test('a leg raise has a button and the space bar for the start of symptoms; after that the space bar stops', async () => {
    for (const tellIt of [
      () => fireEvent.click(screen.getByRole('button', { name: /Symptoms start here/ })),
      () => fireEvent.keyDown(document.body, { key: ' ' }),
    ]) {
      const fake = fakeServices();
      shownAt('/choose/camera', fake.services);
      fireEvent.click(await screen.findByRole('radio', { name: /Straight leg raise/ }));
      await press(/Start the camera/);
      await press('None of these');
      await screen.findByRole('button', { name: /Stop/ });
      const [set] = fake.begun;
      act(() => set?.hooks.onOpened(OPENED));
      act(() => set?.hooks.onView(aView({ phase: 'setting-up' })));
      expect(screen.getByRole<HTMLButtonElement>('button', { name: /Symptoms start here/ }).disabled).toBe(true);
      act(() => set?.hooks.onView(aView({ count: 1 })));
      expect(screen.getByRole('button', { name: /Stop/ }).textContent).toContain('Escape');
      tellIt();
      expect(set).toMatchObject({ onsets: 1, stopped: false });
      expect(screen.getByRole<HTMLButtonElement>('button', { name: 'Start of symptoms noted' }).disabled).toBe(true);
      expect(screen.getByRole('button', { name: /Stop/ }).textContent).toContain('space bar');
      fireEvent.keyDown(document.body, { key: ' ' });
      expect(set).toMatchObject({ onsets: 1, stopped: true });
      cleanup();
    }
  });

  test('other exercises have no such button', async () => {
    const { tell } = await runningExample();
    tell(({ hooks }) => hooks.onView(aView({ count: 1 })));
    expect(screen.queryByRole('button', { name: /Symptoms/ })).toBeNull();
  });

  test('the space bar on another button is that button’s own', async () => {
    const { set, tell } = await runningExample();
    tell(({ hooks }) => hooks.onView(aView({ count: 1 })));
    fireEvent.keyDown(screen.getByRole('button', { name: 'Sound on' }), { key: ' ' });
    expect(set.stopped).toBe(false);
  });

  test('the end leads to the result by itself', async () => {
    const { set } = await runningExample();
    await act(() => set.end(ok(aSet([aRep(1)]))));
    expect(await screen.findByRole('heading', { name: 'Every repetition' })).toBeTruthy();
    expect(window.location.hash).toBe('#/set/set-1');
  });

  test('leaving the screen stops the set', async () => {
    const { set } = await runningExample();
    await act(async () => {
      window.location.hash = '/urgent';
      window.dispatchEvent(new HashChangeEvent('hashchange'));
    });
    expect(set.stopped).toBe(true);
  });

  test('a failure says what is wrong, and trying again begins the same set', async () => {
    const { set, begun } = await runningExample();
    await act(() => set.end(fail({ kind: 'example-missing' })));
    expect(screen.getByRole('heading', { name: 'The example film is not here.' })).toBeTruthy();
    fireEvent.click(screen.getByRole('button', { name: 'Try again' }));
    expect(begun).toHaveLength(2);
  });

  test('what was kept of a set that broke off is one press away', async () => {
    const { set } = await runningExample();
    await act(() => set.end(fail({ kind: 'file-broken', keptId: 'set-1' })));
    fireEvent.click(screen.getByRole('link', { name: 'See what was counted' }));
    expect(await screen.findByRole('heading', { name: 'Every repetition' })).toBeTruthy();
  });

  test('a set that could not be stored is stored or saved at once, and no other is offered in its place', async () => {
    const { set } = await runningExample();
    await act(() => set.end(fail({ kind: 'not-stored', keptId: 'set-1' })));
    expect(screen.getByRole('button', { name: 'Save it as a file' })).toBeTruthy();
    expect(screen.queryByRole('button', { name: 'Try again' })).toBeNull();
    expect(screen.queryByRole('link', { name: 'Count without the camera' })).toBeNull();
    fireEvent.click(screen.getByRole('button', { name: 'Store it now' }));
    expect(await screen.findByRole('heading', { name: 'Every repetition' })).toBeTruthy();
    expect(window.location.hash).toBe('#/set/set-1');
  });

  test('of a set by stickers the banner says when one is lost or mixed up, and no hand is asked for', async () => {
    const { run, begun } = await runningExample();
    act(() => run.begin({ ...EXAMPLE_PLAN, pictures: { kind: 'camera', deviceId: null }, exercise: 'toe-lift' }));
    await screen.findByRole('heading', { name: 'Big toe lifts, left foot' });
    const set = begun[1];
    act(() => set?.hooks.onOpened(OPENED));
    act(() => set?.hooks.onView(aView({ count: 1 })));
    expect(screen.getByRole('button', { name: /Stop/ }).textContent).toBe('Stopor press the space bar');
    act(() => set?.hooks.onView(aView({ phase: 'lost', count: 1, stickers: { points: { tip: null }, implausible: false } })));
    expect(screen.getByRole('status').textContent).toBe('I can’t see all three stickers. Your count is kept.');
    act(() => set?.hooks.onView(aView({ phase: 'lost', count: 1, stickers: { points: { tip: null }, implausible: true } })));
    expect(screen.getByRole('status').textContent).toContain('Something else looks like a sticker.');
    const hidden = { points: { tip: null }, implausible: false, unseen: { tip: 'glare' as const } };
    act(() => set?.hooks.onView(aView({ phase: 'lost', count: 1, stickers: hidden })));
    expect(screen.getByRole('status').textContent).toBe('Light shines off a sticker. Turn the lamp away. Your count is kept.');
    // A flicker while it counts is not told.
    act(() => set?.hooks.onView(aView({ count: 1 })));
    act(() => set?.hooks.onView(aView({ count: 1, stickers: hidden })));
    expect(screen.getByRole('status').textContent).not.toContain('Light');
  });

  test('the loading of the model is shown', async () => {
    const { tell } = await runningExample();
    tell(({ hooks }) => hooks.onLoading(ratio(0.4)));
    expect(screen.getByRole('progressbar').getAttribute('value')).toBe('0.4');
  });

  test('a page loaded anew on the set’s address goes to the start', async () => {
    shownAt('/run', fakeServices().services);
    expect(await screen.findByRole('button', { name: /Use the camera/ })).toBeTruthy();
  });
});
