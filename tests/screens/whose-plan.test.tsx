// @vitest-environment jsdom
import { cleanup, fireEvent, screen } from '@testing-library/react';
import { afterEach, describe, expect, test } from 'vitest';
import type { Prescription } from '../../src/dose/prescription.ts';
import { startingDose } from '../../src/dose/starting-doses.ts';
import { newId } from '../../src/record/new-id.ts';
import type { Person } from '../../src/record/person.ts';
import { encodePlanCode } from '../../src/record/plan-transfer.ts';
import { wentWell } from '../record/went-well.ts';
import { daysAgo } from './diary-builder.ts';
import { fakeServices } from './fake-services.ts';
import { shownAt } from './shown.tsx';

afterEach(cleanup);

const plan: Prescription = {
  ...daysAgo(1),
  kind: 'prescription',
  by: { role: 'therapist', name: 'Wilma Beispiel (invented)' },
  revises: null,
  items: [startingDose('heel-stand', newId(), ['left'])],
  selfChecks: { checks: [], sides: [], everyDays: 7 },
};
const address = `/take/${wentWell(encodePlanCode(plan, { named: true }))}`;

const person = (name: string): Person => ({
  id: newId(),
  schema: 1,
  name,
  affectedSide: 'left',
  notes: '',
  addedAt: daysAgo(9).at,
  changedAt: daysAgo(9).at,
  seenUntil: null,
});

describe('a link opened where a list of people is kept', () => {
  test('asks whose plan it is, and opens it with the one who was chosen', async () => {
    const { services, people } = fakeServices();
    const [zora, ada] = [person('Zora Musterfrau (invented)'), person('Ada Beispiel (invented)')];
    for (const each of [zora, ada]) people.set(each.id, each);
    shownAt(address, services);
    await screen.findByText('You keep a list of people. Whose plan is this?');
    const choice = screen.getByRole('combobox', { name: 'Person' });
    expect([...choice.querySelectorAll('option')].map(({ textContent }) => textContent)).toEqual([ada.name, zora.name]);
    fireEvent.change(choice, { target: { value: zora.id } });
    fireEvent.click(screen.getByRole('button', { name: 'Open it with this person' }));
    await screen.findByText(new RegExp(`${zora.name.replace(/[()]/g, '.')}`));
    expect(location.hash).toBe(`#/person/${zora.id}${address}`);
    expect(await screen.findByRole('button', { name: 'Take this plan on' })).toBeTruthy();
    expect(screen.queryByRole('combobox')).toBeNull();
  });

  test('without a list nothing is asked', async () => {
    shownAt(address, fakeServices().services);
    expect(await screen.findByRole('button', { name: 'Take this plan on' })).toBeTruthy();
    expect(screen.queryByRole('combobox')).toBeNull();
  });
});
