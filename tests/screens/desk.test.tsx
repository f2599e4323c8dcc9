// @vitest-environment jsdom
import { act, cleanup, fireEvent, screen, within } from '@testing-library/react';
import { afterEach, beforeEach, describe, expect, test, vi } from 'vitest';
import type { SharedWindow } from '../../src/capture/shared-window.ts';
import { fail, ok } from '../../src/result.ts';
import { entriesOf } from '../../src/screens/desk/mark-entries.ts';
import { type Mark, marksOf, measuredMarks, type Reading, type WaitingMark } from '../../src/screens/desk/marks.ts';
import { resultsText } from '../../src/screens/desk/results-text.ts';
import { en } from '../../src/screens/words/en.ts';
import type { CalendarDay } from '../../src/symptoms/calendar-day.ts';
import { deg, ms } from '../../src/units.ts';
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
  vi.restoreAllMocks();
});

const OPENED = { size: { width: 640, height: 480 }, durationMs: null, preview: null };

/** A measured recording of leg raises that rest at 2 degrees and reach `peakDeg` at 3 s. */
const recorded = (side: 'left' | 'right', peakDeg: number) => {
  const set = aSet([], { exercise: 'leg-raise', side });
  const at = Array.from({ length: 50 }, (_, i) => i * 100);
  const curve = { tMs: at.map(ms), angleDeg: at.map((t) => deg(t >= 2800 && t <= 3200 ? peakDeg : 2)) };
  return { ...set, result: set.result && { ...set.result, exercise: 'leg-raise' as const, side, curve } };
};

/** One recording at the desk: begun, marked `times` at 3 s, done. */
async function measure(fake: ReturnType<typeof fakeServices>, side: 'left' | 'right', peakDeg: number, times: number) {
  await press('Start measuring');
  const driven = fake.begun.at(-1) as DrivenSet;
  const tell = (hook: () => void) => act(hook);
  tell(() => driven.hooks.onOpened(OPENED));
  tell(() => {
    const image = { displayWidth: 640, displayHeight: 480 } as VideoFrame;
    driven.hooks.onFrame({ tMs: ms(3000), image, turn: 0 });
    driven.hooks.onView(aView({ angleDeg: deg(peakDeg), restDeg: deg(2) }));
  });
  for (let i = 0; i < times; i += 1) fireEvent.keyDown(document.body, { key: '2' });
  const set = recorded(side, peakDeg);
  fake.sets.set(set.id, set);
  fireEvent.click(screen.getByRole('button', { name: 'Done' }));
  await act(() => driven.end(ok(set)));
  return driven;
}

async function withCamera() {
  const fake = fakeServices();
  shownAt('/desk', fake.services);
  fireEvent.click(await screen.findByRole('radio', { name: /This camera/ }));
  return fake;
}

describe('measuring an angle', () => {
  test('what is marked by key is measured from the finished recording, from rest, and nothing is stored', async () => {
    const fake = await withCamera();
    const driven = await measure(fake, 'left', 42, 2);
    expect(driven.plan).toMatchObject({ pictures: { kind: 'camera' }, exercise: 'leg-raise', stored: false, targetReps: null });
    const row = (await screen.findByRole('rowheader', { name: 'Left leg, As far as it goes' })).closest('tr') as HTMLElement;
    expect(
      within(row)
        .getAllByRole('cell')
        .map((cell) => cell.textContent),
    ).toEqual(['40.0°', '40.0°', '40.0°', '0.0°']);
    expect(fake.sets.size).toBe(0);
    expect(fake.entries).toEqual([]);
  });

  test('three trials of each leg are compared, against the error', async () => {
    const fake = await withCamera();
    await measure(fake, 'left', 42, 3);
    fireEvent.click(await screen.findByRole('radio', { name: 'Right leg' }));
    await measure(fake, 'right', 62, 3);
    expect(await screen.findByText(/Right leg: 20\.0° more\. That is more than the error of measurement/)).toBeTruthy();
  });

  test('two trials of a leg are too few to compare', async () => {
    const fake = await withCamera();
    await measure(fake, 'left', 42, 3);
    fireEvent.click(await screen.findByRole('radio', { name: 'Right leg' }));
    await measure(fake, 'right', 62, 2);
    expect(await screen.findByText(/Mark at least three times on each leg/)).toBeTruthy();
  });

  test('a leg that is not seen cannot be marked, and that is said', async () => {
    const fake = await withCamera();
    await press('Start measuring');
    const [driven] = fake.begun;
    act(() => driven?.hooks.onOpened(OPENED));
    act(() => driven?.hooks.onView(aView({ angleDeg: null })));
    fireEvent.click(screen.getByRole('button', { name: /First symptom/ }));
    expect(screen.getByText('The leg is not seen now. Mark again when it is.')).toBeTruthy();
  });

  test('a recording that fails says why and can be begun again', async () => {
    const fake = await withCamera();
    await press('Start measuring');
    await act(() => fake.begun[0]?.end(fail({ kind: 'camera-in-use' })) ?? Promise.resolve());
    expect(await screen.findByText('The camera is used by another program.')).toBeTruthy();
    await press('Start measuring');
    expect(fake.begun).toHaveLength(2);
  });
});

describe('a shared window', () => {
  const windowOf = () => {
    const track = Object.assign(new EventTarget(), { readyState: 'live' });
    const stream = { getVideoTracks: () => [track], getTracks: () => [track] } as unknown as MediaStream;
    const stop = vi.fn();
    const shared: SharedWindow = { stream, size: { width: 1280, height: 720 }, stop };
    return { track, shared, stop };
  };

  test('is chosen, cut by its edges, measured in that part, and let go when the screen is left', async () => {
    const { shared, stop } = windowOf();
    const fake = fakeServices([], { shareWindow: async () => ok(shared) });
    shownAt('/desk', fake.services);
    expect((await screen.findByRole<HTMLButtonElement>('button', { name: 'Start measuring' })).disabled).toBe(true);
    await press('Choose the window');
    fireEvent.change(await screen.findByRole('slider', { name: 'Right edge' }), { target: { value: '641' } });
    await press('Start measuring');
    expect(fake.begun[0]?.plan.pictures).toEqual({ kind: 'window', shared, crop: { left: 0, top: 0, width: 640, height: 720 } });
    await act(async () => {
      window.location.hash = '/';
      window.dispatchEvent(new HashChangeEvent('hashchange'));
    });
    expect(stop).toHaveBeenCalled();
    expect(fake.begun[0]?.stopped).toBe(true);
  });

  test('a box too small is said to be, and not measured', async () => {
    const fake = fakeServices([], { shareWindow: async () => ok(windowOf().shared) });
    shownAt('/desk', fake.services);
    await press('Choose the window');
    fireEvent.change(await screen.findByRole('slider', { name: 'Right edge' }), { target: { value: '40' } });
    expect(screen.getByRole('alert').textContent).toContain('too small');
    expect(screen.getByRole<HTMLButtonElement>('button', { name: 'Start measuring' }).disabled).toBe(true);
  });

  test('that nobody chose is said to be none', async () => {
    shownAt('/desk', fakeServices().services);
    await press('Choose the window');
    expect(await screen.findByText('No window was chosen.')).toBeTruthy();
  });

  test('whose sharing is ended in the browser is to be chosen anew', async () => {
    const { shared, track } = windowOf();
    shownAt('/desk', fakeServices([], { shareWindow: async () => ok(shared) }).services);
    await press('Choose the window');
    await screen.findByRole('slider', { name: 'Right edge' });
    // What listens for the end is there once the page has settled.
    await act(async () => undefined);
    act(() => void track.dispatchEvent(new Event('ended')));
    expect(await screen.findByRole('button', { name: 'Choose the window' })).toBeTruthy();
  });
});

describe('marks', () => {
  const curve = { tMs: [0, 100, 200, 1000, 1100].map(ms), angleDeg: [deg(1), deg(1), deg(1), deg(31), deg(31)] };
  const about = {
    kind: 'limit',
    exercise: 'leg-raise',
    side: 'left',
    from: 'camera',
    notes: { foot: null, place: null },
  } as const;
  const waiting = (id: string, tMs: number): WaitingMark => ({ ...about, id, tMs: ms(tMs), liveDeg: deg(28) });
  const read = (id: string, angleDeg: number, over: Partial<Reading> = {}): Mark => ({
    ...about,
    id,
    kind: 'first-symptom',
    side: 'right',
    reading: { angleDeg: deg(angleDeg), zero: 'rest', errorDeg: deg(3.5), method: 'followed', ...over },
  });

  test('are measured from the curve once it is over, with the wider of two errors; outside of it they have no value', () => {
    const rep = aRep(1, { startMs: ms(900), endMs: ms(1200), uncertaintyDeg: deg(6) });
    const marks = measuredMarks([waiting('a', 1050), waiting('b', 5000), waiting('c', 100)], { curve, reps: [rep] });
    expect(marks.map(({ reading }) => reading?.angleDeg ?? null)).toEqual([30, null, 0]);
    expect(marks[0]?.reading).toMatchObject({ zero: 'rest', method: 'followed', errorDeg: 6 });
    expect(marks[2]?.reading?.errorDeg).toBeCloseTo(1.96 * 1.8);
    expect(marksOf(marks, 'leg-raise', { side: 'left', kind: 'limit', zero: 'rest' }).map(({ id }) => id)).toEqual(['a', 'c']);
    expect(marksOf(marks, 'leg-raise', { side: 'left', kind: 'first-symptom', zero: 'rest' })).toEqual([]);
  });

  test('that count from rest and those that do not are never in one mean', () => {
    const marks = [read('a', 40), read('b', 50, { zero: 'own', method: 'corrected' }), read('c', 44)];
    expect(resultsText(marks, 'leg-raise', en).split('\n').slice(1, 3)).toEqual([
      'Right leg, First symptom, from rest: 40.0° ± 3.5°; 44.0° ± 3.5°. Mean 42.0°, Spread (SD) 2.8°',
      'Right leg, First symptom, hip to ankle, above the horizontal of the picture: 50.0° ± 3.5° (Corrected by hand). Mean 50.0°',
    ]);
  });

  test('are written as text with what is noted, mean, spread and method', () => {
    const noted = { foot: 'pulled-up', place: { region: 'calf-back', side: 'right' } } as const;
    expect(resultsText([{ ...read('a', 40), notes: noted }], 'leg-raise', en)).toBe(
      [
        'Straight leg raise',
        'Right leg, First symptom, from rest: 40.0° ± 3.5° (Foot: Pulled up, Felt at: Back of the calf). Mean 40.0°',
        '2D camera, sagittal projection. It supports and does not replace clinical examination.',
      ].join('\n'),
    );
  });

  test('become entries of the diary with their trial, without those that were not measured or are there already', () => {
    const marks: readonly Mark[] = [read('a', 40), { ...about, id: 'b', reading: null }, read('c', 44, { method: 'corrected' })];
    let made = 0;
    const entry = () => {
      made += 1;
      return {
        id: `e${made}`,
        schema: 1,
        origin: 'own',
        at: '2026-05-04T09:00:00.000Z',
        day: '2026-05-04' as CalendarDay,
      } as const;
    };
    const entries = entriesOf(marks, new Set(['a']), { sessionId: 's', entry });
    expect(entries).toEqual([
      {
        id: 'c',
        schema: 1,
        origin: 'own',
        at: '2026-05-04T09:00:00.000Z',
        day: '2026-05-04',
        kind: 'angle-mark',
        exercise: 'leg-raise',
        side: 'right',
        mark: 'first-symptom',
        trial: 2,
        angleDeg: 44,
        zero: 'rest',
        errorDeg: 3.5,
        method: 'corrected',
        from: 'camera',
        foot: null,
        place: null,
        sessionId: 's',
      },
    ]);
  });
});
