// @vitest-environment jsdom
import { cleanup, fireEvent, screen, waitFor, within } from '@testing-library/react';
import { afterEach, describe, expect, test } from 'vitest';
import { givenPlan } from '../../src/dose/given-plan.ts';
import type { Prescription } from '../../src/dose/prescription.ts';
import { startingDose } from '../../src/dose/starting-doses.ts';
import { newId } from '../../src/record/new-id.ts';
import { encodePlan } from '../../src/record/plan-transfer.ts';
import { fail } from '../../src/result.ts';
import { wentWell } from '../record/went-well.ts';
import { daysAgo } from './diary-builder.ts';
import { shownAt } from './shown.tsx';
import { codeOf, withDiary, writtenAgo } from './written-plan.ts';

afterEach(cleanup);

describe('taking a plan on from a link', () => {
  const offered = () => screen.findByRole('button', { name: 'Take this plan on' });

  test('shows lines, doses and by whom, writes nothing by itself, and stores it under its id when told to', async () => {
    const plan = writtenAgo(3);
    const { services, entries } = withDiary();
    shownAt(`/take/${codeOf(plan)}`, services);
    const take = await offered();
    expect(screen.getByText(/^From Wilma Beispiel \(invented\), written on /)).toBeTruthy();
    const line = screen.getByRole('heading', { name: /^Heel stands/ }).closest('li') as HTMLElement;
    expect(line.textContent).toContain('5 times, each held for 5 s; one set a day, on 3 days a week');
    expect(entries).toEqual([]);
    fireEvent.click(take);
    await screen.findByText('Heel stands, left leg');
    const [kept] = entries as Prescription[];
    expect(entries).toHaveLength(1);
    expect(kept).toMatchObject({ ...givenPlan(plan), kind: 'prescription', schema: 1 });
    expect(Date.parse(kept?.at ?? '')).toBeGreaterThan(Date.parse(plan.at));
  });

  test('not now leaves everything as it is', async () => {
    const { services, entries } = withDiary();
    shownAt(`/take/${codeOf(writtenAgo(3))}`, services);
    await offered();
    fireEvent.click(screen.getByRole('link', { name: 'Not now' }));
    await screen.findByText('There is no plan yet');
    expect(entries).toEqual([]);
  });

  test('twice changes nothing', async () => {
    const plan = writtenAgo(3);
    const { services, entries } = withDiary({ ...plan, ...daysAgo(1), id: plan.id, writtenAt: plan.at });
    shownAt(`/take/${codeOf(plan)}`, services);
    expect(await screen.findByText('You have this plan already.')).toBeTruthy();
    expect(screen.queryByRole('button', { name: 'Take this plan on' })).toBeNull();
    expect(entries).toHaveLength(1);
  });

  test('an older plan than the therapist’s one here says so and cannot be taken', async () => {
    const { services, entries } = withDiary(writtenAgo(1));
    shownAt(`/take/${codeOf(writtenAgo(3))}`, services);
    expect(await screen.findByText('This plan is older than the one you have.')).toBeTruthy();
    expect(screen.queryByRole('button', { name: 'Take this plan on' })).toBeNull();
    expect(entries).toHaveLength(1);
  });

  test('looks again before it writes: what another tab has taken on meanwhile counts', async () => {
    const { services, entries } = withDiary();
    shownAt(`/take/${codeOf(writtenAgo(3))}`, services);
    const take = await offered();
    entries.push(writtenAgo(1));
    fireEvent.click(take);
    expect(await screen.findByText('This plan is older than the one you have.')).toBeTruthy();
    expect(entries).toHaveLength(1);
  });

  test('takes the place of what the person made alone, even later', async () => {
    const own = writtenAgo(1, { by: { role: 'patient', name: '' }, items: [startingDose('toe-lift', newId(), ['right'])] });
    shownAt(`/take/${codeOf(writtenAgo(3))}`, withDiary(own).services);
    const take = await offered();
    expect(screen.getByText(/takes the place of your plan/)).toBeTruthy();
    fireEvent.click(take);
    await screen.findByText('Heel stands, left leg');
    expect(screen.queryByText(/^Big toe lifts/)).toBeNull();
  });

  test('what cannot be stored stays on the screen, to be tried again', async () => {
    const { services } = withDiary();
    const diary = { ...services.diary, add: async () => fail({ kind: 'store-full' as const }) };
    shownAt(`/take/${codeOf(writtenAgo(3))}`, { ...services, diary });
    fireEvent.click(await offered());
    expect((await screen.findByRole('alert')).textContent).toContain('no room left');
    expect((await offered()).hasAttribute('disabled')).toBe(false);
  });

  test.each([
    ['cut short', (code: string) => code.slice(0, -9)],
    ['with a stray percent sign', (code: string) => `${code.slice(0, 30)}%${code.slice(30)}`],
    ['with a slash in it', (code: string) => `${code.slice(0, 30)}/${code.slice(30)}`],
    ['empty', () => ''],
  ])('a damaged link (%s) says what to do, and writes nothing', async (_, harm) => {
    const { services, entries } = withDiary();
    shownAt(`/take/${harm(codeOf(writtenAgo(3)))}`, services);
    await waitFor(() => expect(screen.queryByRole('button', { name: 'Take this plan on' })).toBeNull());
    if (harm('x') !== '') expect((await screen.findByRole('alert')).textContent).toContain('damaged on its way');
    expect(await screen.findByText('Choose the file')).toBeTruthy();
    expect(entries).toEqual([]);
  });
});

describe('taking a plan on from a file', () => {
  const pick = async (file: File) => {
    const input = (await screen.findByLabelText('Choose the file')) as HTMLInputElement;
    fireEvent.change(input, { target: { files: [file] } });
  };
  const fileOf = (text: string) => Object.assign(new File([text], 'plan.json'), { text: async () => text });

  test('is reached from a day without a plan', async () => {
    const { services, entries } = withDiary();
    shownAt('/today', services);
    fireEvent.click(await screen.findByRole('link', { name: 'Open a plan from my therapist' }));
    const plan = writtenAgo(3);
    await pick(fileOf(wentWell(encodePlan(plan))));
    fireEvent.click(await screen.findByRole('button', { name: 'Take this plan on' }));
    await screen.findByText('Heel stands, left leg');
    expect(entries).toMatchObject([givenPlan(plan)]);
  });

  test.each([
    ['This is not a plan.', '{"evenside":"recording"}'],
    ['This is not a plan.', '%PDF-1.7 and so on'],
    ['damaged on its way', '{"evenside": "plan", "version": 1, "plan": {"id"'],
    ['made with a newer Evenside', '{"evenside":"plan","version":3}'],
    ['For your therapist: plan', '{"evenside":"plan","version":1}'],
    ['far too large', 'x'.repeat(900_000)],
  ])('%s: said in one sentence, nothing written, another can be chosen', async (said, text) => {
    const { services, entries } = withDiary();
    shownAt('/take', services);
    await pick(fileOf(text));
    expect((await screen.findByRole('alert')).textContent).toContain(said);
    expect(entries).toEqual([]);
    await pick(fileOf(wentWell(encodePlan(writtenAgo(3)))));
    expect(await screen.findByRole('button', { name: 'Take this plan on' })).toBeTruthy();
  });

  test('a file that cannot be read says so', async () => {
    shownAt('/take', withDiary().services);
    await pick(
      Object.assign(new File(['x'], 'plan.json'), { text: () => Promise.reject(new DOMException('gone', 'NotReadableError')) }),
    );
    expect((await screen.findByRole('alert')).textContent).toContain('could not be read');
  });

  test('a link can be pasted instead', async () => {
    shownAt('/take', withDiary().services);
    const field = await screen.findByRole('textbox', { name: 'Link' });
    fireEvent.change(field, { target: { value: `Your plan: https://example.org/#/take/${codeOf(writtenAgo(3))}` } });
    fireEvent.click(screen.getByRole('button', { name: 'Read the link' }));
    const lines = within(await screen.findByRole('main')).getAllByRole('heading', { level: 2 });
    expect(lines.map(({ textContent }) => textContent)).toEqual(['Heel standsLeft leg', 'Foot tapsEach leg']);
  });
});
