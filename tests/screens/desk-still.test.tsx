// @vitest-environment jsdom
import { act, cleanup, fireEvent, screen, waitFor } from '@testing-library/react';
import { afterEach, beforeEach, describe, expect, test, vi } from 'vitest';
import type { Frame } from '../../src/capture/frame.ts';
import type { LegDrawing } from '../../src/measure/live-view.ts';
import type { Person } from '../../src/record/person.ts';
import { fail, ok } from '../../src/result.ts';
import { deg, type Ms, ms, px } from '../../src/units.ts';
import { fakeCanvas } from './fake-canvas.ts';
import { aView } from './fake-run.ts';
import { fakeServices } from './fake-services.ts';
import { aRep, aSet } from './fake-sets.ts';
import { press, shownAt } from './shown.tsx';

beforeEach(() => {
  fakeCanvas();
});
afterEach(() => {
  cleanup();
  vi.restoreAllMocks();
});

const PERSON: Person = {
  id: '00000000-0000-4000-8000-000000000001',
  schema: 1,
  name: 'Ina Invented',
  affectedSide: 'left',
  notes: '',
  addedAt: '2026-01-01T10:00:00.000Z',
  changedAt: '2026-01-01T10:00:00.000Z',
  seenUntil: null,
};
const SIZE = { width: 640, height: 480 };
const TIMES = [0, 40, 90, 120].map(ms);
const at = (x: number, y: number) => ({ x: px(x), y: px(y) });
const LEG: LegDrawing = { hip: at(400, 300), knee: at(300, 250), ankle: at(200, 200), heel: at(205, 205), toe: at(190, 170) };

/** A film's pictures as the browser would decode them; `closed` counts those that were let go. */
function fakeFilm() {
  const asked: Ms[] = [];
  const world = { closed: 0, filmClosed: false };
  const frameAt = async (tMs: Ms): Promise<Frame> => {
    asked.push(tMs);
    const image = { displayWidth: 640, displayHeight: 480, close: () => (world.closed += 1) } as unknown as VideoFrame;
    return { tMs, image, turn: 0 };
  };
  const close = () => {
    world.filmClosed = true;
  };
  return { asked, world, openFilm: async () => ok({ frameAt, close }) };
}

/** A film of one raise to 50 degrees that was chosen, measured and opened. */
async function openedFilm(change: Parameters<typeof fakeServices>[1] = {}, followed = true, path = '/desk') {
  const film = fakeFilm();
  const still = { openFilm: film.openFilm, photo: async () => fail({ kind: 'photo-unreadable' as const }) };
  const fake = fakeServices([], { still, ...change });
  fake.people.set(PERSON.id, PERSON);
  shownAt(path, fake.services);
  fireEvent.click(await screen.findByRole('radio', { name: /A video/ }));
  const file = new File(['film'], 'raise.mp4', { type: 'video/mp4' });
  fireEvent.change(document.querySelector('input[type=file]') as HTMLInputElement, { target: { files: [file] } });
  await press('Start measuring');
  const [driven] = fake.begun;
  if (!driven) throw new Error('expected a recording');
  act(() => driven.hooks.onOpened({ size: SIZE, durationMs: ms(160), preview: null }));
  for (const tMs of TIMES)
    act(() => {
      driven.hooks.onFrame({ tMs, image: { displayWidth: 640, displayHeight: 480 } as VideoFrame, turn: 0 });
      driven.hooks.onView(aView({ leg: LEG }));
    });
  const set = aSet([], { exercise: 'leg-raise' });
  const curve = { tMs: TIMES, angleDeg: [deg(0), deg(0), deg(0), deg(50)] };
  const reps = [aRep(1, { startMs: ms(0), peakMs: ms(120), endMs: ms(130) })];
  const measured = { ...set, result: set.result && { ...set.result, curve, reps } };
  fake.sets.set(set.id, measured);
  await act(() => driven.end(followed ? ok(measured) : fail({ kind: 'nothing-measured', warnings: ['far-leg'] })));
  await screen.findByRole('slider', { name: 'Place in the video' });
  return { fake, film, driven };
}

const angleShown = () => document.querySelector('.desk-angle')?.textContent;
const isAt = (where: RegExp) => waitFor(() => expect(document.querySelector('.film-where')?.textContent).toMatch(where));

describe('a film at the desk', () => {
  test('is measured as a whole, unstored, then shown picture by picture at its own times', async () => {
    const { fake, film, driven } = await openedFilm();
    expect(driven.plan).toMatchObject({ pictures: { kind: 'file' }, stored: false });
    expect(fake.sets.size).toBe(0);
    await isAt(/^0\.000 s · picture 1 of 4/);
    fireEvent.keyDown(document.body, { key: '.' });
    await isAt(/^0\.040 s · picture 2 of 4/);
    fireEvent.keyDown(document.body, { key: ',' });
    fireEvent.keyDown(document.body, { key: ',' });
    await isAt(/^0\.000 s/);
    fireEvent.change(screen.getByRole('slider', { name: 'Place in the video' }), { target: { value: '2' } });
    await isAt(/^0\.090 s · picture 3 of 4/);
    await press('Top of movement 1');
    await isAt(/^0\.120 s · picture 4 of 4/);
    expect(film.asked).toEqual([0, 40, 0, 90, 120]);
    expect(film.world.closed).toBe(film.asked.length);
    await press('Done');
    await waitFor(() => expect(film.world.filmClosed).toBe(true));
  });

  test('corrected points are kept with their picture, and go back to those that were found', async () => {
    await openedFilm();
    await isAt(/^0\.000 s/);
    await press('Correct the points');
    expect(angleShown()).toBe('26.6°');
    expect(screen.getByText('From the points of this picture alone')).toBeTruthy();
    const ankle = screen.getByRole('button', { name: 'Ankle: 200 across, 200 down' });
    fireEvent.keyDown(ankle, { key: 'ArrowUp', shiftKey: true });
    fireEvent.keyDown(ankle, { key: 'ArrowRight' });
    expect(screen.getByRole('button', { name: 'Ankle: 201 across, 190 down' })).toBeTruthy();
    expect(angleShown()).toBe(`${((Math.atan2(110, 199) * 180) / Math.PI).toFixed(1)}°`);
    expect(screen.getByText('Corrected by hand')).toBeTruthy();
    fireEvent.keyDown(document.body, { key: '.' });
    await isAt(/^0\.040 s/);
    await waitFor(() => expect(screen.queryByText('Corrected by hand')).toBeNull());
    fireEvent.keyDown(document.body, { key: ',' });
    expect(await screen.findByText('Corrected by hand')).toBeTruthy();
    await press('Back to the found points');
    expect(angleShown()).toBe('26.6°');
    await press('Points are right');
    expect(screen.getByText('from rest')).toBeTruthy();
  });

  test('marks take foot and place with them; kept, they are angles in the diary that can no longer be changed', async () => {
    const { fake } = await openedFilm();
    await isAt(/^0\.000 s/);
    await press('Relaxed');
    await press('Sole');
    fireEvent.keyDown(document.body, { key: '2' });
    expect(screen.getByText('As far as it goes: 0.0°')).toBeTruthy();
    await press('Correct the points');
    fireEvent.keyDown(document.body, { key: '1' });
    await press('Done');
    fireEvent.change(await screen.findByRole('combobox', { name: /First symptom, Trial 1: Foot/ }), {
      target: { value: 'pointed' },
    });
    await press('Keep these 2 angles');
    expect(await screen.findByText('2 angles are kept.')).toBeTruthy();
    const about = { kind: 'angle-mark', exercise: 'leg-raise', side: 'left', from: 'file', trial: 1, origin: 'own', schema: 1 };
    const place = { region: 'sole', side: 'left' };
    expect(fake.entries).toMatchObject([
      { ...about, mark: 'limit', zero: 'rest', method: 'followed', foot: 'relaxed', place },
      { ...about, mark: 'first-symptom', zero: 'own', method: 'landmarks', foot: 'pointed', place },
    ]);
    const [one, two] = fake.entries;
    expect(one && two && 'sessionId' in one && 'sessionId' in two && one.sessionId === two.sessionId).toBe(true);
    expect(screen.getByRole<HTMLSelectElement>('combobox', { name: /First symptom, Trial 1: Foot/ }).disabled).toBe(true);
    expect(screen.queryByRole('button', { name: /^Keep/ })).toBeNull();
    expect(screen.queryByRole('button', { name: /^Remove/ })).toBeNull();
  });

  test.each([
    ['in a person’s record are there again', `/person/${PERSON.id}/desk`, true],
    ['outside of a record are not mixed with those of whoever comes next', '/desk', false],
  ])('that were not kept when the desk was left, %s', async (_, path, found) => {
    await openedFilm({}, true, path);
    await isAt(/^0\.000 s/);
    fireEvent.keyDown(document.body, { key: '2' });
    await press('Done');
    await screen.findByRole('button', { name: 'Keep this angle' });
    fireEvent.click(screen.getByRole('link', { name: 'Back' }));
    await waitFor(() => expect(screen.queryByRole('button', { name: 'Keep this angle' })).toBeNull());
    act(() => window.location.assign(`#${path}`));
    await screen.findByRole('button', { name: 'Start measuring' });
    expect(screen.queryByRole('button', { name: 'Keep this angle' }) !== null).toBe(found);
  });

  test('that cannot be kept says why, and can be kept again', async () => {
    const { fake } = await openedFilm();
    await isAt(/^0\.000 s/);
    fireEvent.keyDown(document.body, { key: '2' });
    await press('Done');
    const add = vi.spyOn(fake.services.diary, 'add').mockResolvedValueOnce(fail({ kind: 'store-full' }));
    await press('Keep this angle');
    expect(await screen.findByRole('alert')).toBeTruthy();
    await press('Keep this angle');
    expect(await screen.findByText('1 angle is kept.')).toBeTruthy();
    expect(add).toHaveBeenCalledTimes(2);
  });

  test('without a movement from rest is shown all the same, by the points of each picture, and says what was in the way', async () => {
    await openedFilm({}, false);
    expect(await screen.findByText('No movement from rest was found in this video.')).toBeTruthy();
    await isAt(/^0\.000 s/);
    expect(angleShown()).toBe('26.6°');
    expect(screen.getByText('hip to ankle, above the horizontal of the picture')).toBeTruthy();
  });
});

test('a photo that is none is said to be none, and another can be chosen', async () => {
  shownAt('/desk', fakeServices().services);
  fireEvent.click(await screen.findByRole('radio', { name: /A photo/ }));
  const file = new File(['x'], 'notes.txt', { type: 'text/plain' });
  fireEvent.change(document.querySelector('input[type=file]') as HTMLInputElement, { target: { files: [file] } });
  await press('Measure this photo');
  expect(await screen.findByText('This file is not a photo that the browser can show.')).toBeTruthy();
  await press('Done');
  expect(await screen.findByRole('radio', { name: /A photo/ })).toBeTruthy();
});

test('a live picture is frozen with its leg, corrected and marked, while the recording goes on', async () => {
  const fake = fakeServices();
  shownAt('/desk', fake.services);
  fireEvent.click(await screen.findByRole('radio', { name: /This camera/ }));
  await press('Start measuring');
  const [driven] = fake.begun;
  if (!driven) throw new Error('expected a recording');
  const frame = (tMs: number, leg: LegDrawing) => {
    act(() => driven.hooks.onFrame({ tMs: ms(tMs), image: { displayWidth: 640, displayHeight: 480 } as VideoFrame, turn: 0 }));
    act(() => driven.hooks.onView(aView({ leg, angleDeg: deg(42), restDeg: deg(2) })));
  };
  act(() => driven.hooks.onOpened({ size: SIZE, durationMs: null, preview: null }));
  frame(1000, LEG);
  await press('Freeze the picture');
  frame(1040, { ...LEG });
  expect(await screen.findByText('This picture stands still. The recording goes on.')).toBeTruthy();
  frame(1080, { ...LEG, ankle: at(300, 300) });
  fireEvent.keyDown(document.body, { key: '1' });
  await press('Correct the points');
  fireEvent.keyDown(screen.getByRole('button', { name: 'Ankle: 200 across, 200 down' }), { key: 'ArrowLeft' });
  fireEvent.keyDown(document.body, { key: '2' });
  await press('Back to the live picture');
  await press('Done');
  const set = aSet([], { exercise: 'leg-raise' });
  const curve = { tMs: [0, 500, 1040].map(ms), angleDeg: [deg(2), deg(2), deg(41)] };
  fake.sets.set(set.id, { ...set, result: set.result && { ...set.result, curve } });
  await act(() => driven.end(ok(set)));
  // What was not corrected is measured at the frozen moment, once the movement is over.
  expect((await screen.findByRole('row', { name: /First symptom.*39\.0°/ })).textContent).not.toContain('by hand');
  expect(screen.getByRole('row', { name: /As far as it goes.*by hand/ })).toBeTruthy();
});
