// @vitest-environment jsdom
import { cleanup, fireEvent, screen, waitFor } from '@testing-library/react';
import { afterEach, expect, test } from 'vitest';
import type { DiaryEntry } from '../../src/record/diary-entry.ts';
import { entryNow } from '../../src/screens/day/entry-now.ts';
import { ALL_NO, daysAgo } from './diary-builder.ts';
import { fakeServices } from './fake-services.ts';
import { aSet } from './fake-sets.ts';
import { press, shownAt } from './shown.tsx';

afterEach(cleanup);

const startButton = async () => {
  const start = await screen.findByRole('button', { name: 'Start the camera' });
  await waitFor(() => expect(start.hasAttribute('disabled')).toBe(false));
  return start;
};

test('from the first screen a set begins with three presses, the red flags among them', async () => {
  const { services, begun, entries } = fakeServices();
  shownAt('/', services);
  fireEvent.click(await screen.findByRole('button', { name: /Use the camera/ }));
  fireEvent.click(await startButton());
  expect(begun).toEqual([]);
  await press('None of these');
  await screen.findByRole('button', { name: /Stop/ });
  expect(begun).toHaveLength(1);
  expect(entries).toMatchObject([{ kind: 'red-flags', answers: ALL_NO }]);
});

test('on a day on which they were answered a free set begins at once', async () => {
  const { services, begun, entries } = fakeServices();
  entries.push({ ...entryNow(), kind: 'red-flags', answers: ALL_NO });
  shownAt('/choose/camera', services);
  fireEvent.click(await startButton());
  await screen.findByRole('button', { name: /Stop/ });
  expect(begun).toHaveLength(1);
});

test('who is not sure answers one by one; a yes stops the day, also where there is no plan', async () => {
  const { services, begun } = fakeServices();
  shownAt('/choose/camera', services);
  fireEvent.click(await startButton());
  fireEvent.click(await screen.findByRole('link', { name: 'Yes, or I’m not sure' }));
  fireEvent.click((await screen.findAllByRole('radio', { name: 'Yes' }))[0] as HTMLElement);
  expect(await screen.findByText('No exercises now: get help at once')).toBeTruthy();
  expect(screen.queryByText('There is no plan yet')).toBeNull();
  expect(begun).toEqual([]);
});

test('six times no leads back to the set', async () => {
  const { services } = fakeServices();
  shownAt('/questions/free', services);
  for (const no of await screen.findAllByRole('radio', { name: 'No' })) fireEvent.click(no);
  fireEvent.click(screen.getByRole('button', { name: 'Done' }));
  expect(await screen.findByRole('heading', { name: 'What will you do?' })).toBeTruthy();
});

test('a set of another day is done again only after the questions of this one', async () => {
  const fake = fakeServices([aSet([])]);
  const yesterday: DiaryEntry = { ...daysAgo(1), kind: 'red-flags', answers: ALL_NO };
  fake.entries.push(yesterday);
  shownAt('/set/set-1', fake.services);
  const again = await screen.findByRole('button', { name: 'Do it again' });
  await waitFor(() => expect(again.hasAttribute('disabled')).toBe(false));
  fireEvent.click(again);
  fireEvent.click(await startButton());
  expect(await screen.findByRole('button', { name: 'None of these' })).toBeTruthy();
  expect(fake.begun).toEqual([]);
});

test('the cautions of the exercise stand with the questions', async () => {
  shownAt('/choose/camera', fakeServices().services);
  fireEvent.click(await screen.findByRole('radio', { name: /Straight leg raise/ }));
  fireEvent.click(await startButton());
  expect(await screen.findByText('Never pull hard. A light pull is enough.')).toBeTruthy();
});
