// @vitest-environment jsdom
import { cleanup, fireEvent, screen, within } from '@testing-library/react';
import { afterEach, expect, test, vi } from 'vitest';
import { startingDose } from '../../src/dose/starting-doses.ts';
import { DEFAULT_NAMING } from '../../src/fhir/naming.ts';
import { recordsOf } from '../../src/fhir/records-of.ts';
import type { DiaryEntry } from '../../src/record/diary-entry.ts';
import { newId } from '../../src/record/new-id.ts';
import { fail } from '../../src/result.ts';
import type { ShownSet } from '../../src/screens/services.ts';
import { deg } from '../../src/units.ts';
import { ALL_NO, daysAgo } from './diary-builder.ts';
import { fakeServices } from './fake-services.ts';
import { aRep, aSet } from './fake-sets.ts';
import { shownAt } from './shown.tsx';

afterEach(() => {
  cleanup();
  vi.restoreAllMocks();
  vi.unstubAllGlobals();
});

const taps = {
  ...startingDose('foot-tap', newId(), ['left', 'right']),
  target: { kind: 'range' as const, fromDeg: deg(20), toDeg: deg(25) },
};
const plan: DiaryEntry & { readonly kind: 'prescription' } = {
  ...daysAgo(5),
  kind: 'prescription',
  by: { role: 'therapist', name: 'Wilma Muster' },
  revises: null,
  items: [taps, startingDose('nerve-glide', newId(), ['left'])],
  selfChecks: { checks: ['big-toe'], sides: ['left'], everyDays: 7 },
};
const measured = (days: number, side: 'left' | 'right', rangeDeg: number): ShownSet => {
  const reps = [1, 2, 3, 4].map((number) => aRep(number, { rangeDeg: deg(rangeDeg) }));
  return aSet(reps, { id: `${days} ${side}`, side, startedAt: daysAgo(days).at });
};

/** The report of these sets and entries, opened. */
async function report(entries: readonly DiaryEntry[], sets: readonly ShownSet[] = []) {
  const fake = fakeServices(sets);
  fake.entries.push(...entries);
  shownAt('/report', fake.services);
  await screen.findByRole('heading', { level: 2, name: 'Prescribed' });
  return fake;
}
const section = (name: string) => within(screen.getByRole('heading', { level: 2, name }).closest('section') as HTMLElement);

test('it is reached from how it is going', async () => {
  const { services, entries } = fakeServices();
  entries.push(plan);
  shownAt('/progress', services);
  fireEvent.click(await screen.findByRole('link', { name: 'Report to print or take along' }));
  expect(await screen.findByRole('heading', { level: 1, name: 'Report for the therapist' })).toBeTruthy();
});

test('what was prescribed, by whom, at which dose now and at first', async () => {
  const less: DiaryEntry = {
    ...daysAgo(1),
    kind: 'dose-step',
    prescriptionId: plan.id,
    itemId: taps.id,
    direction: 'back',
    from: taps.start,
    to: { ...taps.start, repsASet: 10 },
    aboutDay: null,
    reason: 'chosen',
    by: 'patient',
  };
  await report([plan, less]);
  const prescribed = section('Prescribed');
  expect(prescribed.getByText(/by a therapist.*Wilma Muster/)).toBeTruthy();
  expect(prescribed.getByText(/^3 sets a day, 10 times;.*At first: 3 sets a day, 15 times/)).toBeTruthy();
  expect(prescribed.getByText('20° to 25°')).toBeTruthy();
  const steps = section('Steps of the dose');
  expect(steps.getByText(/Foot taps: 10 repetitions a set instead of 15 \(own wish\)\. By choice\./)).toBeTruthy();
  expect(steps.getByText(/^Nerve glides: keep the dose\. Nothing has been done yet\./)).toBeTruthy();
});

test('what was done of what was due stands for each leg', async () => {
  await report([plan], [measured(3, 'left', 12), measured(3, 'right', 24)]);
  const row = within(section('Done against due').getByRole('row', { name: /^Foot taps/ }));
  expect(row.getAllByText('1 of 18 sets; on one day; 4 repetitions')).toHaveLength(2);
});

test('what was measured is told with error and method, against target, time before and other leg', async () => {
  await report([plan], [measured(3, 'left', 12), measured(1, 'left', 16), measured(1, 'right', 16.4)]);
  const part = section('Measured');
  expect(part.getByText(/2D camera, sagittal projection/)).toBeTruthy();
  const left = part.getByText(/each ± 1\.4: .* 12\.0; .* 16\.0\./).textContent;
  expect(left).toContain('Last below the target (20° to 25°).');
  expect(left).toContain('First day to last: +4.0°, beyond the error (limit 1.1°).');
  expect(left).toContain('Against the other side: -0.4°, not beyond the error (limit 1.9°).');
  const right = part.getByText(/each ± 1\.4: .* 16\.4\./).textContent;
  expect(right).toContain('Measured on one day only');
});

test('nothing measured and no other leg are said, not left out', async () => {
  await report([{ ...plan, items: [{ ...taps, sides: ['left'] }] }], [measured(2, 'left', 12)]);
  expect(section('Measured').getByText(/The other side was not measured\./)).toBeTruthy();
  cleanup();
  await report([plan]);
  expect(section('Measured').getByText('Nothing was measured by the camera in these weeks.')).toBeTruthy();
});

test('warning signs, clearances, symptoms and checks are told with their days', async () => {
  const felt = { intensity: 6, kinds: ['pain'], places: [{ region: 'sole', side: 'left' }] } as const;
  await report([
    plan,
    { ...daysAgo(3), kind: 'red-flags', answers: { ...ALL_NO, 'bladder-bowel': 'yes', 'fever-or-fall': 'not-answered' } },
    { ...daysAgo(2), kind: 'clearance', note: 'Dr Muster' },
    { ...daysAgo(1), kind: 'symptoms', moment: 'before-set', setId: null, itemId: null, ...felt },
    { ...daysAgo(1), kind: 'self-check', findings: [{ check: 'big-toe', side: 'left', found: 'as-strong' }] },
    {
      ...daysAgo(0),
      kind: 'self-check',
      findings: [{ check: 'big-toe', side: 'left', found: 'easily-pushed-down' }],
    },
  ]);
  const safety = section('Warning signs and clearances');
  expect(safety.getByText(/Asked once.*One question was left open\./)).toBeTruthy();
  expect(safety.getByText(/Yes to: Trouble starting or feeling urine/)).toBeTruthy();
  expect(safety.getByText(/free to go on\. Dr Muster/)).toBeTruthy();
  expect(safety.getByText('A check of strength came out worse.', { exact: false })).toBeTruthy();
  expect(safety.getByText(/^Stopped now/)).toBeTruthy();
  expect(section('Symptoms and check-ins').getByText('Sole, left')).toBeTruthy();
  expect(section('Strength, checked alone').getByText('worse than the time before')).toBeTruthy();
});

test('it says that it does not replace examination; an invented plan is called invented, an own one is not', async () => {
  await report([plan]);
  expect(screen.getByText(/supports and does not replace clinical examination/)).toBeTruthy();
  expect(screen.queryByText(/Invented example/)).toBeNull();
  cleanup();
  await report([{ ...plan, origin: 'example' }]);
  expect(screen.getByText(/Invented example/)).toBeTruthy();
});

test('print asks the browser to print', async () => {
  await report([plan]);
  const print = vi.fn();
  vi.stubGlobal('print', print);
  fireEvent.click(screen.getByRole('button', { name: 'Print, or save as PDF' }));
  expect(print).toHaveBeenCalledTimes(1);
});

test('the weeks chosen are saved for a clinic’s system: with a code, or with a name and what was typed', async () => {
  const blobs: Blob[] = [];
  vi.spyOn(URL, 'createObjectURL').mockImplementation((blob) => `blob:${blobs.push(blob as Blob)}`);
  vi.spyOn(URL, 'revokeObjectURL').mockReturnValue();
  const names: string[] = [];
  vi.spyOn(HTMLAnchorElement.prototype, 'click').mockImplementation(function (this: HTMLAnchorElement) {
    names.push(this.download);
  });
  const id = newId();
  const set = { ...measured(3, 'left', 12), id, person: 'me' };
  await report([plan, { ...daysAgo(20), kind: 'clearance', note: 'Dr Muster' }], [set]);
  fireEvent.click(screen.getByRole('button', { name: 'Save 2 weeks as FHIR' }));
  expect((await screen.findByText(/^The file has one set and one entry/)).textContent).toContain(
    'One record with typed text is in it without that text.',
  );
  fireEvent.click(screen.getByRole('radio', { name: /^A name/ }));
  fireEvent.change(screen.getByLabelText('Name, as the clinic knows it'), { target: { value: 'Ina Invented' } });
  fireEvent.click(screen.getByRole('radio', { name: '8 weeks' }));
  fireEvent.click(await screen.findByRole('button', { name: 'Save 8 weeks as FHIR' }));
  const heard = await screen.findByText(/^The file has one set and 2 entries/);
  expect(heard.textContent).not.toContain('without');
  const [coded, named] = await Promise.all(blobs.map(async (blob) => JSON.parse(await blob.text())));
  const patientOf = (bundle: { readonly entry: readonly { readonly resource: { readonly resourceType: string } }[] }) =>
    bundle.entry.find(({ resource }) => resource.resourceType === 'Patient')?.resource;
  expect(names).toEqual(Array(2).fill(expect.stringMatching(/^evenside-fhir-\d{4}-\d{2}-\d{2}\.json$/)));
  expect(JSON.stringify(coded)).not.toMatch(/Invented|Muster/);
  expect(patientOf(named)).toEqual({ ...patientOf(coded), name: [{ text: 'Ina Invented' }] });
  const back = recordsOf(named, DEFAULT_NAMING);
  expect([back.sets.map((each) => each.id), back.diary.length]).toEqual([[id], 2]);
  expect(recordsOf(coded, DEFAULT_NAMING).diary).toEqual([]);
});

test('without a plan there is no report, but the files are there', async () => {
  shownAt('/report', fakeServices().services);
  expect(await screen.findByText(/nothing to report on/)).toBeTruthy();
  expect(screen.getByRole('button', { name: 'Everything as JSON' })).toBeTruthy();
});

test('when the store cannot be read, no file is made and the reason is told', async () => {
  const made = vi.spyOn(HTMLAnchorElement.prototype, 'click');
  const { services } = fakeServices([], { everything: async () => fail({ kind: 'store-full' }) });
  shownAt('/report', services);
  fireEvent.click(await screen.findByRole('button', { name: 'Sets as CSV' }));
  expect(await screen.findByRole('alert')).toBeTruthy();
  expect(made).not.toHaveBeenCalled();
});
