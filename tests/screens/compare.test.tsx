// @vitest-environment jsdom
import { cleanup, fireEvent, screen, within } from '@testing-library/react';
import { afterEach, describe, expect, test } from 'vitest';
import { companionsOf } from '../../src/screens/compare/comparable.ts';
import { deg, ms } from '../../src/units.ts';
import { fakeServices } from './fake-services.ts';
import { aRep, aSet } from './fake-sets.ts';
import { shownAt } from './shown.tsx';

afterEach(cleanup);

const repsOf = (...ranges: readonly number[]) =>
  ranges.map((range, i) => aRep(i + 1, { rangeDeg: deg(range), peakDeg: deg(1 + range) }));
const left = aSet(repsOf(8, 9, 8.5, 8, 9), { id: 'left', startedAt: '2026-03-02T10:00:00.000Z' });
const right = aSet(repsOf(15, 15.5, 15, 14.5), { id: 'right', side: 'right', startedAt: '2026-03-02T10:05:00.000Z' });
const before = aSet(repsOf(8.5, 8, 9), { id: 'before', startedAt: '2026-03-01T10:00:00.000Z' });
const raise = aSet(repsOf(50, 51, 50), { id: 'raise', exercise: 'leg-raise' });

describe('what a set can be compared with', () => {
  test('the other leg\u2019s sets nearest in time, and earlier ones of the same leg, of the same exercise', () => {
    const { otherLeg, sameLeg } = companionsOf(left, [left, right, before, raise]);
    expect(otherLeg.map((s) => s.id)).toEqual(['right']);
    expect(sameLeg.map((s) => s.id)).toEqual(['before']);
    expect(companionsOf(before, [left, right, before]).sameLeg).toEqual([]);
  });

  test('is offered on the result, one click away', async () => {
    shownAt('/set/left', fakeServices([left, right, before, raise]).services);
    fireEvent.click(await screen.findByRole('link', { name: /^With the other side/ }));
    expect(await screen.findByRole('heading', { name: 'Foot taps, both sides' })).toBeTruthy();
  });

  test('nothing yet is said in one sentence', async () => {
    shownAt('/set/left', fakeServices([left]).services);
    expect(await screen.findByText(/^Do a set with the other side/)).toBeTruthy();
  });
});

describe('two sets side by side', () => {
  const cells = (name: string) =>
    within(screen.getByRole('row', { name: new RegExp(`^${name}`) }))
      .getAllByRole('cell')
      .map((c) => c.textContent);

  test('a leg that goes 6.5 degrees less far differs beyond the error; counts in percent, angles in degrees', async () => {
    shownAt('/compare/left/right', fakeServices([left, right]).services);
    expect(await screen.findByText('Right leg: 6.5° further.')).toBeTruthy();
    expect(screen.getByText(/^That is more than the error of measurement/)).toBeTruthy();
    expect(cells('How far, usually')).toEqual(['8.5°', '15.0°', '-6.5°']);
    expect(cells('Counted')).toEqual(['5', '4', '+25%']);
    expect(cells('Held')).toEqual(['0.2 s', '0.2 s', 'too short to say']);
  });

  test('sets measured in two ways have no sure difference, and say why; they are offered last, and named', async () => {
    const through = { ...right, id: 'through', model: 'stickers' as const, startedAt: left.startedAt };
    expect(companionsOf(left, [left, through, right]).otherLeg.map((s) => s.id)).toEqual(['right', 'through']);
    shownAt('/set/left', fakeServices([left, through]).services);
    fireEvent.click(await screen.findByRole('link', { name: /three stickers/ }));
    expect(await screen.findByText('No sure difference in how far.')).toBeTruthy();
    expect(screen.getByText(/measured through stickers, the other by the camera alone/)).toBeTruthy();
    expect(screen.queryByText(/more than the error of measurement/)).toBeNull();
    expect(cells('How far, usually')).toEqual(['8.5°', '15.0°', '-6.5°']);
  });

  test('a difference that measuring alone may make is not called one', async () => {
    shownAt('/compare/left/before', fakeServices([left, before]).services);
    expect(await screen.findByText('No sure difference in how far.')).toBeTruthy();
    expect(screen.getByText(/^It is smaller than the error of measurement/)).toBeTruthy();
    expect(screen.queryByText(/Healthy legs differ/)).toBeNull();
  });

  test('repetitions struck out by hand are left out', async () => {
    const edits = [1, 2].map((number) => ({
      id: `e${number}`,
      schema: 1 as const,
      setId: 'struck',
      at: '2026-03-02T11:00:00.000Z',
      kind: 'strike' as const,
      rep: { kind: 'measured' as const, number },
    }));
    const struck = aSet(repsOf(8, 8, 12, 12, 12), { id: 'struck', edits });
    shownAt('/compare/struck/right', fakeServices([struck, right]).services);
    expect((await screen.findAllByText('12.0°')).length).toBeGreaterThan(0);
    expect(cells('Counted')[0]).toBe('3');
  });

  test('sets that do not go together say why in one sentence', async () => {
    shownAt('/compare/left/raise', fakeServices([left, raise]).services);
    expect(await screen.findByText(/two different exercises/)).toBeTruthy();
    cleanup();
    shownAt('/compare/left/short', fakeServices([left, aSet(repsOf(9, 9), { id: 'short', side: 'right' })]).services);
    expect(await screen.findByText(/at least three counted/)).toBeTruthy();
  });

  test('a set that is not here says so', async () => {
    shownAt('/compare/left/gone', fakeServices([left]).services);
    expect(await screen.findByRole('heading', { level: 1 })).toBeTruthy();
    expect(screen.queryByRole('table')).toBeNull();
  });
});

describe('a set of foot taps by itself', () => {
  const term = (name: string) => screen.getByText(name, { selector: 'dt' }).parentElement?.textContent ?? '';

  test('tells its tempo, its hold and that it tired', async () => {
    const reps = repsOf(16, 16, 16, 14, 14, 14, 10, 10, 10);
    const set = aSet(reps, { id: 'tired' });
    const result = set.result && { ...set.result, curve: { tMs: [ms(0), ms(100), ms(200)], angleDeg: [deg(0), deg(0), deg(0)] } };
    shownAt('/set/tired', fakeServices([{ ...set, result }]).services);
    await screen.findByRole('heading', { name: 'Through the set' });
    expect(term('Tempo')).toContain('30 a minute');
    expect(term('Held at the top')).toContain('0.2 s');
    expect(term('Last third against first')).toMatch(/-6\.0°More than the error/);
  });

  test('too few for thirds says how many are needed; other exercises have no such part', async () => {
    shownAt('/set/left', fakeServices([left]).services);
    await screen.findByRole('heading', { name: 'Through the set' });
    expect(term('Last third against first')).toContain('Needs 9 counted taps.');
    cleanup();
    shownAt('/set/raise', fakeServices([raise]).services);
    await screen.findByRole('heading', { name: /Straight leg raises/ });
    expect(screen.queryByRole('heading', { name: 'Through the set' })).toBeNull();
  });
});
