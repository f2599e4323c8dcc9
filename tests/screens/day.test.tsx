// @vitest-environment jsdom
import { cleanup, fireEvent, screen, waitFor, within } from '@testing-library/react';
import { afterEach, describe, expect, test } from 'vitest';
import type { Prescription } from '../../src/dose/prescription.ts';
import { startingDose } from '../../src/dose/starting-doses.ts';
import type { DiaryEntry } from '../../src/record/diary-entry.ts';
import { newId } from '../../src/record/new-id.ts';
import { fail } from '../../src/result.ts';
import { entryNow } from '../../src/screens/day/entry-now.ts';
import { ALL_NO } from './diary-builder.ts';
import { fakeServices } from './fake-services.ts';
import { aSet } from './fake-sets.ts';
import { press, shownAt } from './shown.tsx';

afterEach(cleanup);

const plan = (origin: 'own' | 'example' = 'own'): Prescription => ({
  ...entryNow(origin),
  kind: 'prescription',
  by: { role: 'therapist', name: 'Wilma Beispiel (invented)' },
  revises: null,
  items: [startingDose('heel-stand', newId(), ['left']), startingDose('nerve-glide', newId(), ['right'])],
  selfChecks: { checks: [], sides: [], everyDays: 7 },
});

/** The screens over a diary that holds these entries. */
function withDiary(...entries: readonly DiaryEntry[]) {
  const fake = fakeServices();
  fake.entries.push(...entries);
  return fake;
}
const kinds = (entries: readonly DiaryEntry[]) => entries.map((entry) => entry.kind);

describe('today', () => {
  test('without a plan offers to make one, or an invented example that goes away again', async () => {
    const { services, entries } = withDiary();
    shownAt('/today', services);
    fireEvent.click(await screen.findByRole('button', { name: 'Try an invented example' }));
    expect(await screen.findByText(/invented example, not your plan/)).toBeTruthy();
    expect(entries.every((entry) => entry.origin === 'example')).toBe(true);
    fireEvent.click(screen.getByRole('button', { name: 'Remove the example' }));
    await screen.findByText('There is no plan yet');
    expect(entries).toEqual([]);
  });

  test('shows each line with what is due, and asks the questions first', async () => {
    shownAt('/today', withDiary(plan()).services);
    const line = (await screen.findByText('Heel stands, left leg')).closest('li') as HTMLElement;
    expect(line.textContent).toContain('5 times, each held for 5 s');
    expect(line.textContent).toContain('0 of 1 set done');
    fireEvent.click(within(line).getByRole('link', { name: /^Start: / }));
    expect(await screen.findByRole('heading', { name: 'Before you start' })).toBeTruthy();
  });

  test('each way into a set says by itself which one', async () => {
    shownAt('/today', withDiary(plan()).services);
    const ways = await screen.findAllByRole('link', { name: /^Start: / });
    expect(ways.map((way) => way.getAttribute('aria-label'))).toEqual([
      'Start: Heel stands, left leg',
      'Start: Nerve glides, right leg',
    ]);
    expect(ways.map((way) => way.textContent)).toEqual(['Start', 'Start']);
  });

  test('a diary that cannot be read says so', async () => {
    const { services } = fakeServices();
    const diary = { ...services.diary, log: async () => fail({ kind: 'store-unavailable' as const }) };
    shownAt('/today', { ...services, diary });
    expect(await screen.findByRole('alert')).toBeTruthy();
  });
});

describe('the red-flag questions', () => {
  test('all answered no lead on to the set, which the camera or the hand may count', async () => {
    const prescription = plan();
    const { services, entries, begun } = withDiary(prescription);
    shownAt(`/questions/${prescription.items[0]?.id}/left`, services);
    for (const no of await screen.findAllByRole('radio', { name: 'No' })) fireEvent.click(no);
    fireEvent.click(screen.getByRole('button', { name: 'Done' }));
    await press('Go on to the set');
    await press('Start the camera');
    expect(entries.at(1)).toMatchObject({ kind: 'red-flags', answers: ALL_NO });
    expect(begun[0]?.plan).toMatchObject({
      exercise: 'heel-stand',
      side: 'left',
      targetReps: 5,
      line: { prescriptionId: prescription.id, itemId: prescription.items[0]?.id },
    });
  });

  test('what is not answered is kept as such and blocks nothing', async () => {
    const { services, entries } = withDiary(plan());
    shownAt('/questions', services);
    await press('Done');
    await screen.findByRole('heading', { name: 'Today' });
    expect(entries.at(-1)).toMatchObject({ kind: 'red-flags', answers: { 'saddle-numbness': 'not-answered' } });
  });

  test('one yes is kept at once, stops the day, and only a clinician’s word opens it', async () => {
    const { services, entries } = withDiary(plan());
    shownAt('/questions', services);
    fireEvent.click((await screen.findAllByRole('radio', { name: 'Yes' }))[1] as HTMLElement);
    expect(await screen.findByText('No exercises now: get help at once')).toBeTruthy();
    expect(screen.queryByRole('link', { name: /^Start: / })).toBeNull();
    expect(kinds(entries)).toEqual(['prescription', 'red-flags']);
    fireEvent.click(screen.getByRole('button', { name: 'A clinician has seen me since' }));
    fireEvent.change(screen.getByRole('textbox'), { target: { value: 'Dr Nobody (invented): may go on' } });
    // The clearance is to be later than the yes by the clock, which counts in milliseconds.
    await new Promise((resolve) => setTimeout(resolve, 5));
    fireEvent.click(screen.getByRole('button', { name: 'Yes, I may go on' }));
    expect((await screen.findAllByRole('link', { name: /^Start: / })).length).toBeGreaterThan(0);
    expect(entries.at(-1)).toMatchObject({ kind: 'clearance', note: 'Dr Nobody (invented): may go on' });
  });

  const stopped = () => {
    const yes: DiaryEntry = { ...entryNow(), kind: 'red-flags', answers: { ...ALL_NO, 'bladder-bowel': 'yes' } };
    return { prescription: plan(), yes };
  };

  test.each(['/choose/camera', '/today'])('a stopped day cannot be got around from %s', async (path) => {
    const { prescription, yes } = stopped();
    shownAt(path, withDiary(prescription, yes).services);
    expect(await screen.findByText('No exercises now: get help at once')).toBeTruthy();
    expect(screen.queryByRole('button', { name: 'Start the camera' })).toBeNull();
  });

  test('nor from the address of a set, of counting by hand, or by doing a set again', async () => {
    const { prescription, yes } = stopped();
    const [item] = prescription.items;
    for (const way of ['today/go', 'by-hand']) {
      shownAt(`/${way}/${item?.id}/left`, withDiary(prescription, yes).services);
      expect(await screen.findByRole('heading', { name: 'This is not due now.' })).toBeTruthy();
      cleanup();
    }
    const fake = fakeServices([aSet([])]);
    fake.entries.push(prescription, yes);
    shownAt('/set/set-1', fake.services);
    const again = await screen.findByRole('button', { name: 'Do it again' });
    // A click before the diary was read does nothing.
    fireEvent.click(again);
    await waitFor(() => expect(again.hasAttribute('disabled')).toBe(false));
    fireEvent.click(again);
    expect(await screen.findByText('No exercises now: get help at once')).toBeTruthy();
    expect(fake.begun).toEqual([]);
  });
});

describe('without the camera', () => {
  test('a set is counted by button and space bar, taken back, and kept; the day then says so', async () => {
    const prescription = plan();
    const answers: DiaryEntry = { ...entryNow(), kind: 'red-flags', answers: ALL_NO };
    const { services, entries } = withDiary(prescription, answers);
    const glide = prescription.items[1];
    shownAt(`/by-hand/${glide?.id}/right`, services);
    const count = await screen.findByRole('button', { name: /One more/ });
    fireEvent.click(count);
    fireEvent.click(count);
    fireEvent.keyDown(document.body, { key: ' ' });
    fireEvent.click(screen.getByRole('button', { name: 'Take one back' }));
    fireEvent.click(screen.getByRole('button', { name: 'Done' }));
    await press('Keep this');
    fireEvent.click(await screen.findByRole('link', { name: 'Back to today' }));
    await screen.findByRole('heading', { name: 'Today' });
    const line = (await screen.findByText('Nerve glides, right leg')).closest('li') as HTMLElement;
    expect(line.textContent).toContain('1 of 1 set done');
    expect(entries.at(2)).toMatchObject({
      kind: 'hand-set',
      exercise: 'nerve-glide',
      side: 'right',
      reps: 2,
      itemId: glide?.id,
    });
  });
});

describe('a plan of one’s own', () => {
  test('is made of usual starting doses, marked as common practice', async () => {
    const { services, entries } = withDiary();
    shownAt('/plan', services);
    fireEvent.click(await screen.findByRole('checkbox', { name: /Nerve glide/ }));
    fireEvent.click(within(screen.getByRole('group', { name: 'Which leg?' })).getByRole('radio', { name: 'Right leg' }));
    fireEvent.click(screen.getByRole('button', { name: 'This is my plan' }));
    await screen.findByText('Nerve glides, right leg');
    expect(entries[0]).toMatchObject({
      kind: 'prescription',
      by: { role: 'patient' },
      items: [
        { exercise: 'foot-tap', sides: ['right'], basis: 'common-practice' },
        { exercise: 'nerve-glide', sides: ['right'], start: { setsADay: 1 }, basis: 'common-practice' },
      ],
    });
  });

  test('without an exercise there is none', async () => {
    const { services, entries } = withDiary();
    shownAt('/plan', services);
    fireEvent.click(await screen.findByRole('checkbox', { name: /Foot tap/ }));
    expect(screen.getByText('Choose at least one exercise.')).toBeTruthy();
    fireEvent.click(screen.getByRole('button', { name: 'This is my plan' }));
    expect(entries).toEqual([]);
  });
});
