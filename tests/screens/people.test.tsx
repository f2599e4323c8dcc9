// @vitest-environment jsdom
import { cleanup, fireEvent, screen, waitFor, within } from '@testing-library/react';
import { afterEach, describe, expect, test, vi } from 'vitest';
import type { PersonFacts } from '../../src/dose/person-facts.ts';
import type { ListedPerson } from '../../src/record/people-store.ts';
import type { Person } from '../../src/record/person.ts';
import { ok } from '../../src/result.ts';
import { entryNow } from '../../src/screens/day/entry-now.ts';
import { orderedLines, personLine } from '../../src/screens/people/people-lines.ts';
import { usePeopleView } from '../../src/screens/people/people-view.ts';
import { addDays, type CalendarDay } from '../../src/symptoms/calendar-day.ts';
import { ALL_NO } from './diary-builder.ts';
import { fakeServices } from './fake-services.ts';
import { press, shownAt } from './shown.tsx';

afterEach(() => {
  cleanup();
  vi.restoreAllMocks();
  usePeopleView.setState({ search: '', order: 'attention' });
});

const today = new Date().toISOString().slice(0, 10) as CalendarDay;
const idOf = (n: number) => `00000000-0000-4000-8000-${String(n).padStart(12, '0')}`;
const person = (n: number, name: string, over: Partial<Person> = {}): Person => ({
  id: idOf(n),
  schema: 1,
  name,
  affectedSide: 'left',
  notes: '',
  addedAt: '2026-01-01T10:00:00.000Z',
  changedAt: '2026-01-01T10:00:00.000Z',
  seenUntil: null,
  ...over,
});
const NOTHING: PersonFacts = { lastActivity: null, plan: null, stop: null, flare: null, steps: [] };
const RED_FLAG: Partial<PersonFacts> = { stop: { flags: ['saddle-numbness'], weakness: [], urgency: 'now' } };
const listed = (n: number, name: string, facts: Partial<PersonFacts> = {}): ListedPerson => ({
  person: person(n, name),
  facts: { ...NOTHING, ...facts },
});
const namesOf = () =>
  screen.getAllByRole('listitem').flatMap((item) => item.querySelector('.person-row strong')?.textContent ?? []);

function withPeople(people: readonly ListedPerson[]) {
  const services = fakeServices();
  for (const each of people) services.people.set(each.person.id, each.person);
  const list = { ...services.services.people, list: async () => ok({ people, damaged: [] }) };
  return { ...services, services: { ...services.services, people: list } };
}

describe('the order of the list', () => {
  const lines = [
    listed(1, 'Zoe Testcase', { lastActivity: today }),
    listed(2, 'ánna Beispiel', RED_FLAG),
    listed(3, 'Code 10', { flare: { day: today, reason: 'not-settled' }, lastActivity: addDays(today, -1) }),
    listed(4, 'Code 9'),
  ].map((each) => personLine(each, today));
  const names = (search: string, order: Parameters<typeof orderedLines>[2]) =>
    orderedLines(lines, search, order, 'en').map((line) => line.person.name);

  test('puts whoever needs the therapist first, the others by name, numbers as numbers', () => {
    expect(names('', 'attention')).toEqual(['ánna Beispiel', 'Code 10', 'Code 9', 'Zoe Testcase']);
    expect(names('', 'name')).toEqual(['ánna Beispiel', 'Code 9', 'Code 10', 'Zoe Testcase']);
    expect(names('', 'heard')).toEqual(['Zoe Testcase', 'Code 10', 'ánna Beispiel', 'Code 9']);
  });
  test('finds a name whatever its case and accents', () => {
    expect(names(' ANNA ', 'name')).toEqual(['ánna Beispiel']);
    expect(names('code', 'name')).toEqual(['Code 9', 'Code 10']);
  });
});

describe('the list of people', () => {
  test('says that nobody is there, and takes on the first person', async () => {
    const { services, people } = fakeServices();
    shownAt('/people', services);
    await screen.findByText(/Nobody is here yet/);
    fireEvent.click(screen.getByRole('link', { name: 'Add a person' }));
    await press('Keep');
    expect((await screen.findByRole('alert')).textContent).toMatch(/A name or a code is needed/);
    expect(people.size).toBe(0);
    expect(document.activeElement).toBe(screen.getByLabelText('Name or code'));
    fireEvent.change(screen.getByLabelText('Name or code'), { target: { value: '  Ina Invented ' } });
    fireEvent.click(screen.getByRole('radio', { name: 'right leg' }));
    fireEvent.change(screen.getByLabelText('Notes'), { target: { value: 'Rings <b>on</b> Fridays' } });
    await press('Keep');
    await screen.findByRole('heading', { level: 1, name: 'Ina Invented' });
    expect([...people.values()]).toMatchObject([
      { name: 'Ina Invented', affectedSide: 'right', notes: 'Rings <b>on</b> Fridays', seenUntil: null },
    ]);
    expect(screen.getByText('Rings <b>on</b> Fridays')).not.toBeNull();
  });

  test('shows who, what is prescribed, when they were last heard from, and what is the matter', async () => {
    const plan = { since: addDays(today, -9), lines: [{ exercise: 'foot-tap', sides: ['left'] }] } as const;
    const { services } = withPeople([
      listed(1, 'Zoe Testcase', { plan, lastActivity: addDays(today, -8) }),
      listed(2, 'Anna Beispiel', RED_FLAG),
    ]);
    shownAt('/people', services);
    await screen.findByText('Anna Beispiel');
    expect(namesOf()).toEqual(['Anna Beispiel', 'Zoe Testcase']);
    expect(screen.getByText('Red flag: needs urgent care now')).not.toBeNull();
    const zoe = within(screen.getByRole('link', { name: /Zoe/ }));
    for (const text of ['Foot taps', 'Last entry 8 days ago', 'Nothing for 8 days']) expect(zoe.getByText(text)).not.toBeNull();
  });

  test('draws only the lines in sight of five hundred, and finds one by name', async () => {
    // jsdom has no layout: every line is as high as on a laptop.
    vi.spyOn(HTMLElement.prototype, 'offsetHeight', 'get').mockReturnValue(90);
    const { services } = withPeople(Array.from({ length: 500 }, (_, i) => listed(i, `Person ${i}`)));
    shownAt('/people', services);
    await screen.findByText('500 people, nobody needs you now');
    const drawn = await screen.findAllByRole('listitem');
    expect(drawn.length).toBeLessThan(40);
    expect(drawn[0]?.getAttribute('aria-setsize')).toBe('500');
    fireEvent.change(screen.getByLabelText('Find by name'), { target: { value: 'person 499' } });
    await waitFor(() => expect(namesOf()).toEqual(['Person 499']));
    fireEvent.change(screen.getByLabelText('Find by name'), { target: { value: 'nobody' } });
    await screen.findByText('Nobody’s name has “nobody” in it.');
  });

  test('works out what was written to since, one person after the other', async () => {
    const asked: string[] = [];
    const { services } = withPeople([1, 2, 3].map((n) => ({ person: person(n, `Person ${n}`), facts: null })));
    const facts = async (id: string) => {
      asked.push(id);
      return ok({ ...NOTHING, ...(id === idOf(3) ? RED_FLAG : {}) });
    };
    shownAt('/people', { ...services, people: { ...services.people, facts } });
    await waitFor(() => expect(namesOf()).toEqual(['Person 3', 'Person 1', 'Person 2']));
    expect(asked).toEqual([idOf(1), idOf(2), idOf(3)]);
  });
});

describe('one person', () => {
  test('has the same screens as oneself, under their name, and back leads to them', async () => {
    const { services, entries } = withPeople([listed(1, 'Ina Invented')]);
    shownAt(`/person/${idOf(1)}`, services);
    fireEvent.click(await screen.findByRole('link', { name: /^Plan/ }));
    await screen.findByRole('heading', { level: 1, name: 'Plan for Ina Invented' });
    expect(window.location.hash).toBe(`#/person/${idOf(1)}/plan`);
    expect(screen.getByText('Record of Ina Invented')).not.toBeNull();
    expect(screen.queryByText('Who decides this plan?')).toBeNull();
    expect(screen.queryByText(/my therapist/)).toBeNull();
    await press('Save this plan');
    await screen.findByRole('heading', { level: 1, name: 'Ina Invented' });
    expect(entries.at(-1)).toMatchObject({ kind: 'prescription', by: { role: 'therapist' } });
  });

  test('without a plan, the day speaks to the therapist and offers nothing invented', async () => {
    const { services } = withPeople([listed(1, 'Ina Invented')]);
    shownAt(`/person/${idOf(1)}/today`, services);
    await screen.findByRole('link', { name: 'Open a plan from a file or a link' });
    expect(screen.queryByRole('button', { name: /invented/ })).toBeNull();
    expect(document.body.textContent).not.toMatch(/your|my therapist/i);
  });

  test('a stopped day speaks to the therapist, in both ways it can be stopped', async () => {
    for (const answer of ['bladder-bowel', 'foot-drop-worse'] as const) {
      const { services, entries } = withPeople([listed(1, 'Ina Invented')]);
      entries.push({ ...entryNow(), kind: 'red-flags', answers: { ...ALL_NO, [answer]: 'yes' } });
      shownAt(`/person/${idOf(1)}/today`, services);
      await screen.findByRole('button', { name: 'A clinician has seen this person since' });
      expect(document.body.textContent).toMatch(/this person (needs help at once|must be seen today)/);
      expect(document.body.textContent).not.toMatch(/\b(you|your|me)\b/i);
      cleanup();
    }
  });

  test('who is not there is told, with the way back to the list', async () => {
    const { services } = fakeServices();
    shownAt(`/person/${idOf(1)}`, services);
    await screen.findByText('This person is not on this machine.');
    expect(screen.getByRole('link', { name: 'Back' }).getAttribute('href')).toBe('#/people');
  });

  test('is off the list of those who need somebody once it was seen', async () => {
    const { services, people, entries } = withPeople([listed(1, 'Ina Invented')]);
    entries.push({
      id: idOf(40),
      schema: 1,
      origin: 'own',
      at: `${addDays(today, -20)}T09:00:00.000Z`,
      day: addDays(today, -20),
      kind: 'prescription',
      by: { role: 'therapist', name: '' },
      revises: null,
      items: [],
      selfChecks: { checks: [], sides: ['left'], everyDays: 7 },
    });
    shownAt(`/person/${idOf(1)}`, services);
    await screen.findByText('Plan not started');
    await press('I have seen this');
    await screen.findByText('Nothing needs you');
    expect(people.get(idOf(1))?.seenUntil).toBe(today);
  });

  test('is removed only after a second question', async () => {
    const { services, people } = withPeople([listed(1, 'Ina Invented')]);
    shownAt(`/person/${idOf(1)}`, services);
    await press('Remove this person');
    await press('No, keep it');
    expect(people.size).toBe(1);
    await press('Remove this person');
    expect(document.activeElement?.textContent).toBe('No, keep it');
    expect(screen.getByRole('alert').textContent).toContain('Remove Ina Invented with all sets');
    await press('Yes, remove all of it');
    await waitFor(() => expect(people.size).toBe(0));
    expect(window.location.hash).toBe('#/people');
  });
});

test('two tabs change somebody: what was changed elsewhere stays, and a clash is told of', async () => {
  const { services, people } = withPeople([listed(1, 'Ana Muster (invented)')]);
  shownAt(`/person/${idOf(1)}`, services);
  fireEvent.click(await screen.findByRole('button', { name: 'Change name and notes' }));
  people.set(idOf(1), person(1, 'Ana Muster (invented)', { notes: 'written in the other tab' }));
  fireEvent.change(screen.getByLabelText('Notes'), { target: { value: 'written here' } });
  fireEvent.click(screen.getByRole('button', { name: 'Keep' }));
  expect((await screen.findByRole('alert')).textContent).toContain('changed in another tab');
  expect(people.get(idOf(1))?.notes).toBe('written in the other tab');
  expect(screen.getByLabelText<HTMLTextAreaElement>('Notes').value).toBe('written here');
});
