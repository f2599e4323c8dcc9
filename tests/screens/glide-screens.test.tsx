// @vitest-environment jsdom
/** Nerve glides on the screens before, during and without the camera. */
import { act, cleanup, fireEvent, screen } from '@testing-library/react';
import { afterEach, beforeEach, describe, expect, test, vi } from 'vitest';
import type { PrescribedExercise } from '../../src/dose/prescribed-exercise.ts';
import { startingDose } from '../../src/dose/starting-doses.ts';
import { newId } from '../../src/record/new-id.ts';
import { ok } from '../../src/result.ts';
import { entryNow } from '../../src/screens/day/entry-now.ts';
import { enGlideSet } from '../../src/screens/words/en-glide-set.ts';
import { deg, ms } from '../../src/units.ts';
import { angleMark } from '../symptoms/told.ts';
import { ALL_NO } from './diary-builder.ts';
import { fakeCanvas } from './fake-canvas.ts';
import { aView } from './fake-run.ts';
import { type DrivenSet, fakeServices } from './fake-services.ts';
import { aRep, aSet } from './fake-sets.ts';
import { press, shownAt } from './shown.tsx';

beforeEach(() => {
  fakeCanvas();
});
afterEach(() => {
  cleanup();
  vi.useRealTimers();
});

const OPENED = { size: { width: 640, height: 480 }, durationMs: null, preview: null };

/** Somebody with a plan of glides, the day's questions answered. */
function withPlan(over: Partial<PrescribedExercise> = {}) {
  const fake = fakeServices([aSet([aRep(1)])]);
  const item = { ...startingDose('nerve-glide', newId(), ['left']), ...over };
  fake.entries.push(
    {
      ...entryNow(),
      kind: 'prescription',
      by: { role: 'therapist', name: '' },
      revises: null,
      items: [item],
      selfChecks: { checks: [], sides: ['left', 'right'], everyDays: 7 },
    },
    { ...entryNow(), kind: 'red-flags', answers: ALL_NO },
  );
  return { ...fake, item };
}

async function runningGlides() {
  const fake = withPlan();
  const shown = shownAt(`/today/go/${fake.item.id}/left`, fake.services);
  await press('Start the camera');
  const symptoms = await screen.findByRole<HTMLButtonElement>('button', { name: /^Symptoms rise/ });
  const [set] = fake.begun;
  if (!set) throw new Error('glides require a set to begin, got none');
  const tell = (hook: (set: DrivenSet) => void) => act(() => hook(set));
  tell(({ hooks }) => hooks.onOpened(OPENED));
  return { ...shown, ...fake, set, tell, symptoms };
}

describe('before a set of glides', () => {
  test('it says how high the leg may be held and since when that is known, and the set is given that limit', async () => {
    const { services, entries, begun, item } = withPlan();
    entries.push(angleMark(3, 9, { angleDeg: deg(44.6) }), angleMark(3, 9, { side: 'right', angleDeg: deg(70) }));
    shownAt(`/today/go/${item.id}/left`, services);
    expect(await screen.findByText('Leg not higher than 45°, where symptoms began on Sunday, May 3.')).toBeTruthy();
    expect(screen.getByText(enGlideSet.few)).toBeTruthy();
    expect(screen.getByText(enGlideSet.signal(true))).toBeTruthy();
    await press('Start the camera');
    expect(begun[0]?.plan).toMatchObject({ exercise: 'nerve-glide', elevationLimitDeg: 44.6, guide: { tempoS: 4 } });
  });

  test('without a mark it says to go only until symptoms start', async () => {
    const { services, begun, item } = withPlan();
    shownAt(`/today/go/${item.id}/left`, services);
    expect(await screen.findByText(enGlideSet.noLimit)).toBeTruthy();
    await press('Start the camera');
    expect(begun[0]?.plan).not.toHaveProperty('elevationLimitDeg');
  });

  test('one of one’s own has the drawing, the caution and the limit, too', async () => {
    const { services, entries, begun } = fakeServices();
    entries.push(angleMark(3, 9, { angleDeg: deg(52) }));
    shownAt('/choose/camera', services);
    fireEvent.click(await screen.findByRole('radio', { name: /Nerve glide/ }));
    expect(screen.getByRole('img', { name: enGlideSet.drawing })).toBeTruthy();
    expect(await screen.findByText(/^Leg not higher than 52°/)).toBeTruthy();
    await press('Start the camera');
    expect(screen.getByText(enGlideSet.few)).toBeTruthy();
    await press('None of these');
    await screen.findByRole('button', { name: /^Symptoms rise/ });
    expect(begun[0]?.plan).toMatchObject({ exercise: 'nerve-glide', elevationLimitDeg: 52, guide: { tempoS: null } });
  });

  test('the drawing can be paused and moved again', async () => {
    const { services, item } = withPlan();
    shownAt(`/today/go/${item.id}/left`, services);
    expect(await screen.findByText(enGlideSet.cue.point)).toBeTruthy();
    await press(enGlideSet.pause);
    expect(screen.queryByText(enGlideSet.cue.point)).toBeNull();
    await press(enGlideSet.play);
    expect(screen.getByText(enGlideSet.cue.point)).toBeTruthy();
  });
});

describe('a set of glides', () => {
  test('is led by the drawing once it is ready, with cues aloud, and no beat', async () => {
    const { tell, said, played, symptoms } = await runningGlides();
    tell(({ hooks }) => hooks.onView(aView({ phase: 'setting-up' })));
    expect(screen.queryByRole('img', { name: enGlideSet.drawing })).toBeNull();
    expect(symptoms.disabled).toBe(true);
    tell(({ hooks }) => hooks.onView(aView()));
    expect(screen.getByRole('img', { name: enGlideSet.drawing })).toBeTruthy();
    expect(said).toContain(enGlideSet.cue.point);
    expect(played).toEqual([]);
    expect(symptoms.disabled).toBe(false);
    tell(({ hooks }) => hooks.onView(aView({ phase: 'lost' })));
    expect(screen.getByRole('img', { name: enGlideSet.drawing })).toBeTruthy();
  });

  test('shows what each cycle was in signs and the newest in a word, and the correction in the banner', async () => {
    const { tell } = await runningGlides();
    tell(({ hooks }) => hooks.onView(aView({ count: 1 })));
    const cycle = {
      startMs: ms(0),
      endMs: ms(4000),
      pattern: 'tension',
      phaseDeg: deg(170),
      certainty: 0.99,
      footRangeDeg: deg(30),
      headRangeDeg: deg(20),
      reason: null,
    } as const;
    tell(({ hooks }) => hooks.onEvent({ kind: 'glide', cycle }));
    expect(screen.getByText('Other way round')).toBeTruthy();
    tell(({ hooks }) => hooks.onEvent({ kind: 'glide-wrong' }));
    expect(screen.getByRole('status').textContent).toBe('When you point the foot, lift the head.');
    tell(({ hooks }) =>
      hooks.onEvent({ kind: 'glide', cycle: { ...cycle, pattern: 'unclear', phaseDeg: null, reason: 'head-hidden' } }),
    );
    expect(screen.getByText('Not seen')).toBeTruthy();
  });

  test('that symptoms end says so until it was read, then leads to its result', async () => {
    const { tell, set, symptoms } = await runningGlides();
    tell(({ hooks }) => hooks.onView(aView({ count: 1 })));
    vi.useFakeTimers();
    fireEvent.click(symptoms);
    expect(set).toMatchObject({ onsets: 1, stopped: true });
    await act(() => set.end(ok(aSet([aRep(1)]))));
    expect(screen.getByRole('status').textContent).toMatch(/^The set ends because symptoms rise\./);
    await act(() => vi.advanceTimersByTimeAsync(6000));
    expect(window.location.hash).toBe('#/set/set-1');
  });
});

test('glides counted by a beat are led by the drawing and the two cues instead of tones', async () => {
  const { services, item } = withPlan();
  const { said, played } = shownAt(`/by-hand/${item.id}/left`, services);
  await press('Count by a beat instead');
  expect(await screen.findByRole('img', { name: enGlideSet.drawing })).toBeTruthy();
  vi.useFakeTimers();
  fireEvent.click(screen.getByRole('button', { name: 'Start the beat' }));
  for (let s = 0; s < 5; s += 1) act(() => vi.advanceTimersByTime(1000));
  for (let s = 0; s < 9; s += 1) act(() => vi.advanceTimersByTime(1000));
  expect(said.slice(0, 7)).toEqual([
    enGlideSet.cue.point,
    enGlideSet.cue.pull,
    enGlideSet.cue.point,
    '1',
    enGlideSet.cue.pull,
    enGlideSet.cue.point,
    '2',
  ]);
  expect(played.filter((tone) => tone !== 'second')).toEqual([]);
});
