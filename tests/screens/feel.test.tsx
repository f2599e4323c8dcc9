// @vitest-environment jsdom
import { cleanup, fireEvent, screen, within } from '@testing-library/react';
import fc from 'fast-check';
import { safeParse } from 'valibot';
import { afterEach, describe, expect, test } from 'vitest';
import type { Prescription } from '../../src/dose/prescription.ts';
import { startingDose } from '../../src/dose/starting-doses.ts';
import type { DiaryEntry } from '../../src/record/diary-entry.ts';
import { diaryEntryShape } from '../../src/record/diary-shape.ts';
import { newId } from '../../src/record/new-id.ts';
import { entryNow } from '../../src/screens/day/entry-now.ts';
import { answered, UNSAID, withKind, withPlace } from '../../src/screens/feel/feeling.ts';
import { SYMPTOM_KINDS } from '../../src/symptoms/felt.ts';
import { BODY_REGIONS } from '../../src/symptoms/place.ts';
import { ALL_NO, daysAgo } from './diary-builder.ts';
import { fakeServices } from './fake-services.ts';
import { press, shownAt } from './shown.tsx';

afterEach(cleanup);

const item = startingDose('foot-tap', newId(), ['left']);
const prescription: Prescription = {
  ...entryNow(),
  kind: 'prescription',
  by: { role: 'patient', name: '' },
  revises: null,
  items: [item],
  selfChecks: { checks: [], sides: [], everyDays: 7 },
};
const asked: DiaryEntry = { ...entryNow(), kind: 'red-flags', answers: ALL_NO };

function withDiary(...more: readonly DiaryEntry[]) {
  const fake = fakeServices();
  fake.entries.push(prescription, asked, ...more);
  return fake;
}
const strong = (n: number, name = 'How strong is it?') =>
  within(screen.getByRole('group', { name })).getByRole('radio', { name: String(n) });
const place = (leg: string, region: string) => within(screen.getByRole('group', { name: leg })).getByLabelText(region);

describe('before a set', () => {
  test('strength, kinds and places are kept, then the set comes', async () => {
    const { services, entries } = withDiary();
    shownAt(`/feel/before/${item.id}/left`, services);
    await screen.findByRole('heading', { name: 'How is it now?' });
    fireEvent.click(strong(4));
    fireEvent.click(screen.getByLabelText('Tingling'));
    fireEvent.click(screen.getByText('As a list'));
    fireEvent.click(place('Left leg', 'Outside of the calf'));
    await press('Go on to the set');
    await screen.findByRole('button', { name: 'Start the camera' });
    expect(entries.at(-1)).toMatchObject({
      kind: 'symptoms',
      moment: 'before-set',
      itemId: item.id,
      intensity: 4,
      kinds: ['tingling'],
      places: [{ region: 'calf-outer', side: 'left' }],
    });
  });

  test('a place tapped on the drawing is the one ticked in the list, and goes away again', async () => {
    const { container } = shownAt(`/feel/before/${item.id}/left`, withDiary().services);
    fireEvent.click(await screen.findByText('As a list'));
    const drawn = container.querySelector('[data-place="buttock right"]') as Element;
    fireEvent.click(drawn);
    expect((place('Right leg', 'Buttock') as HTMLInputElement).checked).toBe(true);
    expect((place('Left leg', 'Buttock') as HTMLInputElement).checked).toBe(false);
    fireEvent.click(drawn);
    expect((place('Right leg', 'Buttock') as HTMLInputElement).checked).toBe(false);
  });

  test('nothing said is kept as not answered, and blocks nothing', async () => {
    const { services, entries } = withDiary();
    shownAt(`/feel/before/${item.id}/left`, services);
    await press('Go on to the set');
    await screen.findByRole('button', { name: 'Start the camera' });
    expect(entries.at(-1)).toMatchObject({ intensity: 'not-answered', kinds: 'not-answered', places: 'not-answered' });
  });
});

describe('after a set', () => {
  const set: DiaryEntry = {
    ...entryNow(),
    kind: 'hand-set',
    exercise: 'foot-tap',
    side: 'left',
    itemId: item.id,
    reps: 15,
    counted: 'by-hand',
  };
  const feltAt = (region: 'buttock' | 'foot-top'): DiaryEntry => ({
    ...entryNow(),
    kind: 'symptoms',
    moment: 'before-set',
    setId: null,
    itemId: item.id,
    intensity: 3,
    kinds: ['pain'],
    places: [{ region, side: 'left' }],
  });

  test.each([
    ['foot-top', /moved up, toward the back/],
    ['buttock', /moved further down, toward the foot/],
  ] as const)('felt at the %s before and in the calf now is said in plain words', async (was, says) => {
    const { services, entries } = withDiary(feltAt(was), set);
    shownAt(`/feel/after/${set.id}`, services);
    fireEvent.click(await screen.findByText('As a list'));
    fireEvent.click(strong(3));
    fireEvent.click(place('Left leg', 'Back of the calf'));
    await press('Keep this');
    expect(await screen.findByText(says)).toBeTruthy();
    expect(entries.at(-1)).toMatchObject({ kind: 'symptoms', moment: 'after-set', setId: set.id, itemId: item.id });
  });

  test('no symptoms at all is an answer about kinds and places too', async () => {
    const { services, entries } = withDiary(feltAt('buttock'), set);
    shownAt(`/feel/after/${set.id}`, services);
    await screen.findByRole('heading', { name: 'How is it after the set?' });
    fireEvent.click(strong(0));
    await press('Keep this');
    await screen.findByText(/moved up/);
    expect(entries.at(-1)).toMatchObject({ intensity: 0, kinds: [], places: [] });
  });
});

describe('the next day', () => {
  test('today asks how it was, and the answers are kept about that day', async () => {
    const before = daysAgo(1);
    const set: DiaryEntry = {
      ...before,
      kind: 'hand-set',
      exercise: 'foot-tap',
      side: 'left',
      itemId: item.id,
      reps: 15,
      counted: 'by-hand',
    };
    const { services, entries } = withDiary(set);
    shownAt('/today', services);
    fireEvent.click(await screen.findByRole('link', { name: 'Tell how it was' }));
    await screen.findByRole('heading', { name: /^How was it after/ });
    fireEvent.click(strong(5, 'At its worst since then, how strong was it?'));
    fireEvent.click(screen.getByLabelText('Yes, and it has not settled'));
    fireEvent.click(screen.getByLabelText('Weaker than before'));
    await press('Keep this');
    expect(await screen.findByText('No exercises for now: contact your therapist')).toBeTruthy();
    expect(entries.at(-1)).toMatchObject({
      kind: 'check-in',
      aboutDay: before.day,
      worst: 5,
      afterwards: 'not-settled',
      weakness: 'worse',
      intensity: 'not-answered',
    });
  });
});

test('whatever is tapped in whatever order, what is kept has the shape that is stored', () => {
  const tap = fc.oneof(
    fc.record({ kind: fc.constantFrom(...SYMPTOM_KINDS) }),
    fc.record({ region: fc.constantFrom(...BODY_REGIONS), side: fc.constantFrom('left' as const, 'right' as const) }),
    fc.record({ intensity: fc.integer({ min: 0, max: 10 }) }),
  );
  fc.assert(
    fc.property(fc.array(tap, { maxLength: 40 }), (taps) => {
      let felt = UNSAID;
      for (const each of taps) {
        if ('kind' in each) felt = withKind(felt, each.kind);
        else felt = 'region' in each ? withPlace(felt, each) : { ...felt, intensity: each.intensity };
      }
      const entry = { ...entryNow(), kind: 'symptoms', moment: 'before-set', setId: null, itemId: null, ...answered(felt) };
      expect(safeParse(diaryEntryShape, entry).issues).toBeUndefined();
    }),
  );
});
