// @vitest-environment jsdom
import { cleanup, fireEvent, screen } from '@testing-library/react';
import { decodeQR } from 'qr/decode.js';
import { afterEach, describe, expect, test, vi } from 'vitest';
import { givenPlan } from '../../src/dose/given-plan.ts';
import { PRESCRIBED_EXERCISE_IDS, type PrescribedExercise } from '../../src/dose/prescribed-exercise.ts';
import { startingDose } from '../../src/dose/starting-doses.ts';
import { newId } from '../../src/record/new-id.ts';
import { decodePlan } from '../../src/record/plan-transfer.ts';
import { wentWell } from '../record/went-well.ts';
import { shownAt } from './shown.tsx';
import { withDiary, writtenAgo } from './written-plan.ts';

afterEach(() => {
  cleanup();
  vi.restoreAllMocks();
  vi.unstubAllGlobals();
});

/** The modules as they are drawn, painted 4 px each: what a camera would see. */
function seenBy(svg: Element) {
  const size = Number(svg.getAttribute('viewBox')?.split(' ')[2]);
  const side = 4 * size;
  const data = new Uint8ClampedArray(4 * side * side).fill(255);
  const dark = (x: number, y: number) => {
    for (let row = 4 * y; row < 4 * y + 4; row += 1)
      for (let column = 4 * x; column < 4 * x + 4; column += 1)
        data.fill(0, 4 * (row * side + column), 4 * (row * side + column) + 3);
  };
  const path = svg.querySelector('path')?.getAttribute('d') ?? '';
  for (const [, x, y, length] of path.matchAll(/M(\d+) (\d+)h(\d+)v1h-\d+z/g))
    for (let i = 0; i < Number(length); i += 1) dark(Number(x) + i, Number(y));
  return { size, image: { width: side, height: side, data } };
}

describe('giving a plan', () => {
  test('is reached from today, and from the link’s code the same plan comes back', async () => {
    const plan = writtenAgo(2);
    shownAt('/today', withDiary(plan).services);
    fireEvent.click(await screen.findByRole('link', { name: 'Give or print this plan' }));
    const link = await screen.findByRole<HTMLInputElement>('textbox', { name: 'As a link' });
    expect(link.value).toMatch(/^http:\/\/localhost(:\d+)?\/#\/take\/[\w-]+$/);
    expect(wentWell(decodePlan(link.value))).toEqual(givenPlan(plan));
  });

  test('the QR code holds the link, as another reader reads the drawn modules, with four white ones around', async () => {
    shownAt('/plan/give', withDiary(writtenAgo(2)).services);
    const link = await screen.findByRole<HTMLInputElement>('textbox', { name: 'As a link' });
    const { size, image } = seenBy(screen.getByRole('img', { name: 'QR code that holds the link to this plan' }));
    expect(decodeQR(image)).toBe(link.value);
    const darkAt = (x: number, y: number) => image.data[4 * (4 * y * image.width + 4 * x)] === 0;
    const quiet = Array.from({ length: size }, (_, i) => i).flatMap((i) =>
      [0, 1, 2, 3, size - 4, size - 3, size - 2, size - 1].map((edge) => darkAt(i, edge) || darkAt(edge, i)),
    );
    expect(quiet).not.toContain(true);
    expect(darkAt(4, 4)).toBe(true);
  });

  test('a dose for each leg of six exercises fits a QR code, no finer than one of a plan with half as many lines', async () => {
    const items = PRESCRIBED_EXERCISE_IDS.flatMap((id) =>
      (['left', 'right'] as const).map((side, n): PrescribedExercise => {
        const usual = startingDose(id, newId(), [side]);
        return { ...usual, start: { ...usual.start, repsASet: usual.start.repsASet - n }, basis: 'therapist' };
      }),
    );
    shownAt('/plan/give', withDiary(writtenAgo(2, { items })).services);
    const link = await screen.findByRole<HTMLInputElement>('textbox', { name: 'As a link' });
    expect(link.value.length).toBeGreaterThan(700);
    const { size, image } = seenBy(screen.getByRole('img', { name: 'QR code that holds the link to this plan' }));
    expect(decodeQR(image)).toBe(link.value);
    expect(size).toBeLessThanOrEqual(105 + 8);
  });

  test('what holds for every exercise is said once for all of them', async () => {
    const items = ['foot-tap', 'toe-lift'].map((id) => startingDose(id as 'foot-tap', newId(), ['left']));
    const { container } = shownAt('/plan/give', withDiary(writtenAgo(2, { items })).services);
    await screen.findByRole('button', { name: 'Print' });
    expect(container.querySelector('.plan-sheet-all')?.textContent).toBe(
      'With every exercise: At least 60 s of rest between sets. No set when symptoms are above 5 of 10. Nothing on the floor to trip over; the chair must not slide.',
    );
    expect(container.querySelector('.plan-sheet .plan-lines')?.textContent).not.toMatch(
      /rest between|symptoms are above|trip over/,
    );
  });

  test('two lines of one exercise stand under one name, each with its leg; what they share is said once', async () => {
    const tap = startingDose('foot-tap', newId(), ['left']);
    const items: readonly PrescribedExercise[] = [
      { ...tap, cautions: ['keep-breathing'] },
      { ...tap, id: newId(), sides: ['right'], symptomLimit: 3, start: { ...tap.start, repsASet: 8 }, basis: 'therapist' },
    ];
    const { container } = shownAt('/plan/give', withDiary(writtenAgo(2, { items })).services);
    await screen.findByRole('button', { name: 'Print' });
    const lines = [...container.querySelectorAll('.plan-sheet .plan-lines > li')];
    expect(lines).toHaveLength(1);
    const said = lines[0]?.textContent ?? '';
    expect(said).toContain(
      'Foot tapsLeft leg: 15 times; 3 sets a day, every day (usual starting dose). No set when symptoms are above 5 of 10.',
    );
    expect(said).toContain('Right leg: 8 times; 3 sets a day, every day. No set when symptoms are above 3 of 10.');
    expect(said.split('As far as it goes').length + said.split('as far as it goes without pain').length).toBe(3);
    expect(said).toContain('Keep breathing.');
    expect(said).toContain('Nothing on the floor to trip over');
    expect(said.split('At least 60 s of rest between sets.').length).toBe(2);
    expect(container.querySelector('.plan-sheet-all')).toBeNull();
  });

  test('a name makes it that therapist’s plan, and stays out of the link when it is to', async () => {
    shownAt('/plan/give', withDiary(writtenAgo(2, { by: { role: 'patient', name: '' } })).services);
    const link = () => screen.getByRole<HTMLInputElement>('textbox', { name: 'As a link' }).value;
    const name = await screen.findByRole('textbox', { name: /^Name of the therapist/ });
    expect(wentWell(decodePlan(link())).by).toEqual({ role: 'patient', name: '' });
    fireEvent.change(name, { target: { value: ' Ada Example ' } });
    expect(wentWell(decodePlan(link())).by).toEqual({ role: 'therapist', name: 'Ada Example' });
    fireEvent.click(screen.getByRole('checkbox', { name: /^Put the name into the link/ }));
    expect(wentWell(decodePlan(link())).by).toEqual({ role: 'therapist', name: '' });
  });

  test('the file is the plan, named for the day', async () => {
    const plan = writtenAgo(2);
    const saved: { blob: Blob | null; name: string } = { blob: null, name: '' };
    const createObjectURL = (blob: Blob) => {
      saved.blob = blob;
      return 'blob:plan';
    };
    vi.stubGlobal('URL', Object.assign(URL, { createObjectURL, revokeObjectURL: () => undefined }));
    vi.spyOn(HTMLAnchorElement.prototype, 'click').mockImplementation(function (this: HTMLAnchorElement) {
      saved.name = this.download;
    });
    shownAt('/plan/give', withDiary(plan).services);
    fireEvent.click(await screen.findByRole('button', { name: 'Save the file' }));
    expect(saved.name).toBe(`evenside-plan-${plan.at.slice(0, 10)}.json`);
    const reader = new FileReader();
    const text = new Promise<string>((resolve) => {
      reader.onload = () => resolve(String(reader.result));
    });
    reader.readAsText(saved.blob as Blob);
    expect(wentWell(decodePlan(await text))).toEqual(givenPlan(plan));
  });

  test('the link is copied, or marked where the browser refuses', async () => {
    const written: string[] = [];
    const clipboard = { writeText: vi.fn(async (text: string) => void written.push(text)) };
    Object.defineProperty(navigator, 'clipboard', { value: clipboard, configurable: true });
    shownAt('/plan/give', withDiary(writtenAgo(2)).services);
    const field = await screen.findByRole<HTMLInputElement>('textbox', { name: 'As a link' });
    fireEvent.click(screen.getByRole('button', { name: 'Copy the link' }));
    await screen.findByText('Copied.');
    expect(written).toEqual([field.value]);
    clipboard.writeText.mockRejectedValueOnce(new DOMException('no', 'NotAllowedError'));
    fireEvent.click(screen.getByRole('button', { name: 'Copy the link' }));
    await screen.findByText(/copy it by hand/);
    expect([field.selectionStart, field.selectionEnd]).toEqual([0, field.value.length]);
  });

  test('says that nobody else can open a link to this machine', async () => {
    shownAt('/plan/give', withDiary(writtenAgo(2)).services);
    expect(await screen.findByText(/which no other machine can reach/)).toBeTruthy();
  });

  test('the sheet has each line, its dose, limit and cautions, when to stop, and the signs that need urgent care', async () => {
    const { container } = shownAt('/plan/give', withDiary(writtenAgo(2)).services);
    await screen.findByRole('button', { name: 'Print' });
    const sheet = container.querySelector('.plan-sheet')?.textContent ?? '';
    for (const said of [
      'From Wilma Beispiel (invented)',
      'Heel standsLeft leg',
      '5 times, each held for 5 s; one set a day, on 3 days a week',
      'Foot tapsEach leg',
      'How far: 5° to 15°.',
      'No set when symptoms are above 4 of 10.',
      'Hold on to something that stands firm.',
      'Stop when your leg hurts more',
      'Numbness or an odd feeling between the legs',
      'Every hour counts',
      'See a doctor the same day',
    ])
      expect(sheet).toContain(said);
  });

  test('without a plan leads to making one', async () => {
    shownAt('/plan/give', withDiary().services);
    expect(await screen.findByText('There is no plan to give yet.')).toBeTruthy();
  });
});
