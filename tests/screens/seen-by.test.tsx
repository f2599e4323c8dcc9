// @vitest-environment jsdom
import { cleanup, fireEvent, screen } from '@testing-library/react';
import { afterEach, describe, expect, test } from 'vitest';
import type { PrescribedExercise } from '../../src/dose/prescribed-exercise.ts';
import type { Prescription } from '../../src/dose/prescription.ts';
import { startingDose } from '../../src/dose/starting-doses.ts';
import type { SeenBy } from '../../src/exercises/exercise.ts';
import { newId } from '../../src/record/new-id.ts';
import { useChoices } from '../../src/screens/choose/choices.ts';
import { entryNow } from '../../src/screens/day/entry-now.ts';
import { ALL_NO } from './diary-builder.ts';
import { fakeServices } from './fake-services.ts';
import { press, shownAt } from './shown.tsx';

afterEach(() => {
  cleanup();
  useChoices.getState().choose({ by: 'pose' });
});

/** A foot tap in a plan. @param asked how the therapist wants it measured */
function planned(asked: SeenBy | null, exercise: PrescribedExercise['exercise'] = 'foot-tap') {
  const fake = fakeServices();
  const item: PrescribedExercise = {
    ...startingDose(exercise, newId(), ['left']),
    ...(asked ? { seenBy: asked } : {}),
  };
  const prescription: Prescription = {
    ...entryNow(),
    kind: 'prescription',
    by: { role: 'therapist', name: 'Wilma Beispiel (invented)' },
    revises: null,
    items: [item],
    selfChecks: { checks: [], sides: [], everyDays: 7 },
  };
  fake.entries.push(prescription, { ...entryNow(), kind: 'red-flags', answers: ALL_NO });
  return { ...fake, item };
}
const chosen = (name: RegExp) => (screen.getByRole('radio', { name }) as HTMLInputElement).checked;

describe('a prescribed foot tap', () => {
  test('is measured by the camera alone, and through stickers when that is chosen, which is remembered', async () => {
    const { services, item, begun } = planned(null);
    shownAt(`/today/go/${item.id}/left`, services);
    fireEvent.click(await screen.findByRole('radio', { name: /Three stickers/ }));
    expect(screen.getByRole('img', { name: /stickers on shin, ankle and forefoot/ })).toBeTruthy();
    await press('Start the camera');
    // Their place is shown first.
    expect(await screen.findByRole('heading', { level: 1, name: 'Three stickers on your foot' })).toBeTruthy();
    expect(begun).toEqual([]);
    cleanup();
    shownAt(`/today/go/${item.id}/left`, services);
    await screen.findByRole('radio', { name: /Three stickers/ });
    expect(chosen(/Three stickers/)).toBe(true);
  });

  test('for which the therapist asks for stickers begins with them and says so; the camera alone remains possible', async () => {
    const { services, item, begun } = planned('stickers');
    shownAt(`/today/go/${item.id}/left`, services);
    expect(await screen.findByText('Your therapist asks for the stickers.')).toBeTruthy();
    expect(chosen(/Three stickers/)).toBe(true);
    fireEvent.click(screen.getByRole('radio', { name: /Camera alone/ }));
    await press('Start the camera');
    expect(begun).toHaveLength(1);
    expect(begun[0]?.plan.stickers).toBeUndefined();
    // What was done once, against the plan, is no wish for other days.
    expect(useChoices.getState().choices.by).toBe('pose');
  });

  test('a big toe offers no other way than stickers', async () => {
    const { services, item } = planned(null, 'toe-lift');
    shownAt(`/today/go/${item.id}/left`, services);
    await screen.findByRole('button', { name: 'Start the camera' });
    expect(screen.queryByRole('radio')).toBeNull();
  });
});

test('the editor lets stickers be asked for, and the plan that is given says so', async () => {
  const { services, entries } = planned(null);
  shownAt('/plan', services);
  fireEvent.click(await screen.findByText('Change the dose'));
  fireEvent.click(screen.getByRole('radio', { name: /Three stickers/ }));
  await press('Save and give it');
  const kept = entries.at(-1) as Prescription;
  expect(kept.items[0]).toMatchObject({ exercise: 'foot-tap', seenBy: 'stickers' });
  expect((await screen.findAllByText(/Measured through three stickers on the foot\./)).length).toBeGreaterThan(0);
});
