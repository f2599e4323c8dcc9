// @vitest-environment jsdom
import { cleanup, screen, within } from '@testing-library/react';
import { afterEach, describe, expect, test } from 'vitest';
import { startingDose } from '../../src/dose/starting-doses.ts';
import type { GlideResult } from '../../src/measure/set-result.ts';
import type { DiaryEntry } from '../../src/record/diary-entry.ts';
import { newId } from '../../src/record/new-id.ts';
import { againstLimit } from '../../src/screens/glide/against-limit.ts';
import { glideVerdict } from '../../src/screens/glide/glide-verdict.ts';
import type { ShownSet } from '../../src/screens/services.ts';
import { deg } from '../../src/units.ts';
import { aGlide, aLegHeld } from '../record/glide-builders.ts';
import { daysAgo } from './diary-builder.ts';
import { fakeServices } from './fake-services.ts';
import { aRep, aSet } from './fake-sets.ts';
import { shownAt } from './shown.tsx';

afterEach(cleanup);

const glides = startingDose('nerve-glide', newId(), ['left']);
const plan: DiaryEntry & { readonly kind: 'prescription' } = {
  ...daysAgo(6),
  kind: 'prescription',
  by: { role: 'therapist', name: '' },
  revises: null,
  items: [glides],
  selfChecks: { checks: [], sides: [], everyDays: 7 },
};
/** A finished set of glides. */
function aGlideSet(cycles: string, change: Partial<GlideResult> = {}, over: Partial<ShownSet> = {}): ShownSet {
  const reps = [...cycles].map((_, i) => aRep(i + 1, { rangeDeg: deg(31) }));
  const set = aSet(reps, { exercise: 'nerve-glide', ...over });
  return { ...set, result: set.result && { ...set.result, exercise: 'nerve-glide', glide: aGlide(cycles, change) } };
}
const told = (days: number, setId: string | null, intensity: number): DiaryEntry => ({
  ...daysAgo(days + (setId === null ? 1 : -1) / 1440),
  day: daysAgo(days).day,
  kind: 'symptoms',
  moment: setId === null ? 'before-set' : 'after-set',
  setId,
  itemId: glides.id,
  intensity,
  kinds: ['tingling'],
  places: [{ region: setId === null ? 'calf-outer' : 'buttock', side: 'left' }],
});
/** A set of the plan some days ago, with what was told before and after it. */
const ofPlan = (days: number, before: number, after: number): readonly DiaryEntry[] => [
  told(days, null, before),
  { ...daysAgo(days), kind: 'set-link', setId: `set ${days}`, prescriptionId: plan.id, itemId: glides.id },
  told(days, `set ${days}`, after),
];
const setOf = (days: number, cycles: string, change: Partial<GlideResult> = {}) =>
  aGlideSet(cycles, change, { id: `set ${days}`, startedAt: daysAgo(days).at });

test.each([
  ['SSSSS', 'right-way'],
  ['SSTSh', 'right-way'],
  ['STST', 'right-way'],
  ['TTTTTS', 'wrong-way'],
  ['Tbb', 'wrong-way'],
  ['hhF', 'cannot-tell'],
  ['', 'no-cycle'],
] as const)('a set of %s is told as %s', (cycles, kind) => {
  expect(glideVerdict(aGlide(cycles)).kind).toBe(kind);
});

test('the reasons of unclear cycles come once each, the most frequent first', () => {
  expect(glideVerdict(aGlide('hFFS')).reasons).toEqual(['foot-still', 'head-hidden']);
});

test('a leg is above its limit only beyond the error', () => {
  const at = (highestDeg: number) => againstLimit(aLegHeld({ highestDeg: deg(highestDeg) }));
  expect([50, 50.1, 53, 53.1].map(at)).toEqual(['under', 'perhaps-over', 'perhaps-over', 'over']);
});

describe('the result of nerve glides', () => {
  test('says first how many went the right way, then how to do it, and why', async () => {
    shownAt('/set/set-1', fakeServices([aGlideSet('SSSTSh')]).services);
    expect(await screen.findByRole('heading', { level: 2, name: '4 of 6 went the right way.' })).toBeTruthy();
    expect(screen.getByText(/^1 went the other way round.*1 could not be judged\.$/)).toBeTruthy();
    expect(screen.getByText(/^Lift your head while you point your foot/)).toBeTruthy();
    expect(screen.getByText(/camera so that it sees your head/)).toBeTruthy();
    expect(screen.getByText(/^Done this way the nerve slides/)).toBeTruthy();
    expect(screen.getByText('The right way', { selector: 'dt' }).nextElementSibling?.textContent).toBe('67%');
  });

  test('the other way round is said as such; all right ones ask for nothing else', async () => {
    shownAt('/set/set-1', fakeServices([aGlideSet('TTTTTS')]).services);
    expect(await screen.findByRole('heading', { level: 2, name: /^The other way round: your head came up/ })).toBeTruthy();
    expect(screen.getByText('5 of 6 were like this.')).toBeTruthy();
    cleanup();
    shownAt('/set/set-1', fakeServices([aGlideSet('SSSS')]).services);
    expect(await screen.findByText('Keep doing it this way.')).toBeTruthy();
    expect(screen.queryByText(/^Lift your head/)).toBeNull();
  });

  test('each cycle is a mark with its word, an unclear one with its cause', async () => {
    shownAt('/set/set-1', fakeServices([aGlideSet('STb')]).services);
    const marks = (await screen.findByRole('heading', { level: 3, name: 'One by one' })).parentElement as HTMLElement;
    const items = within(marks).getAllByRole('listitem');
    expect(items.map((item) => item.textContent)).toEqual(['1slide', '2other way round', '3not clearneither way']);
    expect(items.map((item) => item.getAttribute('data-pattern'))).toEqual(['slide', 'tension', 'unclear']);
  });

  test('ranges and leg have their errors, the limit where it comes from; what is not known is said', async () => {
    shownAt('/set/set-1', fakeServices([aGlideSet('SSS')]).services);
    const figure = (name: string) => screen.getByText(name, { selector: 'dt' }).parentElement?.textContent;
    await screen.findByText('How far the head went');
    expect(figure('How far the foot went')).toContain('31.0° ± 2.0°');
    expect(figure('How far the head went')).toContain('26.0° ± 4.0°');
    expect(figure('How high the leg was held')).toContain(
      '42.0° ± 3.0°Limit 50.0°: where symptoms begin, as it was marked.Highest 45.5°.',
    );
    cleanup();
    const change = {
      headRangeDeg: null,
      headUncertaintyDeg: null,
      legHeld: aLegHeld({ limitFrom: 'held', highestDeg: deg(60) }),
    };
    shownAt('/set/set-1', fakeServices([aGlideSet('hhh', change)]).services);
    await screen.findByText('How far the head went');
    expect(figure('How far the head went')).toContain('not seen');
    expect(figure('How high the leg was held')).toMatch(/from where you held it at the start.*For a time it was above the limit/);
  });

  test('an early end is told with its reason', async () => {
    shownAt('/set/set-1', fakeServices([aGlideSet('SS', { stopped: 'symptoms' })]).services);
    expect(await screen.findByText(/ended early, because you said that symptoms rise/)).toBeTruthy();
  });

  test('the curve says how many cycles were what; the table has each in the trade’s terms', async () => {
    shownAt('/set/set-1', fakeServices([aGlideSet('SSTb')]).services);
    const curve = await screen.findByRole('img', { name: /2 the right way, 1 the other way round, 1 not clear/ });
    expect([...curve.querySelectorAll('.cycle-mark')].map((mark) => mark.getAttribute('data-pattern'))).toEqual([
      'slide',
      'slide',
      'tension',
      'unclear',
    ]);
    const table = screen.getByText('For the therapist: every glide in numbers').closest('details') as HTMLElement;
    const rows = within(table).getAllByRole('row', { hidden: true }).slice(1);
    expect(rows.map((row) => [...row.children].map(({ textContent }) => textContent))).toEqual([
      ['1', '0:01', 'slide', '12°', '99.8%', '31.0°', '26.0°', ''],
      ['2', '0:03', 'slide', '12°', '99.8%', '31.0°', '26.0°', ''],
      ['3', '0:05', 'tension', '-171°', '99.8%', '31.0°', '26.0°', ''],
      ['4', '0:07', 'unclear', '88°', '62%', '31.0°', '26.0°', 'neither way'],
    ]);
  });

  test('a set without a cycle says so, and shows no marks', async () => {
    shownAt('/set/set-1', fakeServices([aGlideSet('')]).services);
    expect(await screen.findByRole('heading', { level: 2, name: 'No whole glide was seen.' })).toBeTruthy();
    expect(screen.queryByText('One by one')).toBeNull();
    expect(screen.queryByText(/every glide in numbers/)).toBeNull();
  });
});

test('symptoms before and after stand on the result, and whether they moved', async () => {
  const { services, entries } = fakeServices([setOf(1, 'SSS')]);
  entries.push(plan, ...ofPlan(1, 4, 2));
  shownAt('/set/set 1', services);
  const part = within(
    (await screen.findByRole('heading', { level: 2, name: 'Symptoms before and after' })).closest('section') as HTMLElement,
  );
  expect(part.getByText('Before').parentElement?.textContent).toBe('Before4 of 10TinglingOutside of the calf, left');
  expect(part.getByText('After').parentElement?.textContent).toBe('After2 of 10TinglingButtock, left');
  expect(part.getByText('They moved up, toward the back.')).toBeTruthy();
});

test('two sets stand side by side; a difference is called sure only where an error is known', async () => {
  const other = { headRangeDeg: deg(20), legHeld: aLegHeld({ medianDeg: deg(30) }) };
  shownAt('/compare/set 1/set 3', fakeServices([setOf(1, 'SSSS'), setOf(3, 'TTTS', other)]).services);
  const part = (await screen.findByRole('heading', { level: 2, name: 'Foot and head together' })).closest(
    'section',
  ) as HTMLElement;
  const cells = within(part)
    .getAllByRole('row')
    .slice(1)
    .map((row) => [...row.children].map(({ textContent }) => textContent));
  expect(cells).toEqual([
    ['The right way (slides)', '100% (4/4)', '25% (1/4)', '', 'not known: this has no error yet'],
    ['How far the head went', '26.0° ± 4.0°', '20.0° ± 4.0°', '+6.0°', 'yes, more than the error (5.7°)'],
    ['Leg held at', '42.0° ± 3.0°', '30.0° ± 3.0°', '+12.0°', 'yes, more than the error (4.2°)'],
  ]);
  expect(within(part).getByText(/^The leg was not held equally high/)).toBeTruthy();
  expect(screen.queryByText('Held')).toBeNull();
});

describe('for the therapist', () => {
  const twoSets = () => {
    const fake = fakeServices([setOf(3, 'SSSS'), setOf(1, 'TTTTh', { stopped: 'symptoms' })]);
    fake.entries.push(plan, ...ofPlan(3, 3, 2), ...ofPlan(1, 2, 5));
    return fake;
  };

  test('the review names the last set as the other way round first, counts all cycles, and has each set', async () => {
    shownAt('/review', twoSets().services);
    await screen.findByRole('heading', { level: 2, name: 'Better, same or worse?' });
    expect(screen.getByText(/^Nerve glides, left leg: done the other way round in the last set/).textContent).toContain(
      '(0 of 5 cycles slide, 4 tension, 1 unclear)',
    );
    expect(screen.getByText('4 of 9 cycles slide, 4 tension, 1 unclear')).toBeTruthy();
    const table = screen.getByText('Slide or tension, set by set').closest('details') as HTMLElement;
    const last = within(table).getAllByRole('row', { hidden: true }).at(-1)?.textContent;
    expect(last).toContain('leg held at 42.0° ± 3.0° (limit 50.0°, marked)');
    expect(last).toContain('2 → 5');
    expect(last).toContain('ended early: symptoms rose');
    const line = (await screen.findAllByRole('link', { name: /^Nerve glides, left leg/ }))[0];
    expect(line?.textContent).toContain('0 of 5 cycles slide, 4 tension, 1 unclear · leg held at');
  });

  test('the report tells cycles, share, leg, early ends and symptoms around each set', async () => {
    shownAt('/report', twoSets().services);
    const measured = (await screen.findByRole('heading', { level: 2, name: 'Measured' })).closest('section');
    const text = measured?.textContent ?? '';
    expect(text).toContain('4 of 9 cycles slide, 4 tension, 1 unclear (44%) in 2 sets.');
    expect(text).toMatch(/Last, .*: leg held at 42\.0° ± 3\.0° \(limit 50\.0°, marked\)\./);
    expect(text).toContain('1 set ended early.');
    expect(text).toMatch(/Symptoms before → after: .* 3 → 2; .* 2 → 5\./);
  });
});

test('the desk offers every exercise but the glide, of which no single angle is marked', async () => {
  shownAt('/desk', fakeServices().services);
  const movements = await screen.findAllByRole('radio');
  const names = movements
    .filter((radio) => radio.getAttribute('name') === 'desk-movement')
    .map((radio) => radio.parentElement?.textContent);
  expect(names).toHaveLength(4);
  expect(names.some((name) => name?.includes('glide'))).toBe(false);
});
