import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { Felt } from '../../src/symptoms/felt.ts';
import { BODY_REGIONS, distanceOf, mostDistant, type Place } from '../../src/symptoms/place.ts';
import { symptomShift } from '../../src/symptoms/symptom-shift.ts';
import { shiftOverDays, symptomsByDay } from '../../src/symptoms/symptoms-by-day.ts';
import { checkIn, dayOf, report } from './told.ts';

const at = (region: Place['region'], side: Place['side'] = 'left'): Place => ({ region, side });
const felt = (...places: readonly Place[]): Felt => ({ intensity: 3, kinds: ['pain'], places });

test('regions are ordered from the spine to the toes', () => {
  const distances = BODY_REGIONS.map((region) => distanceOf(at(region)));
  expect(distances).toEqual(distances.toSorted((a, b) => a - b));
  expect(BODY_REGIONS[0]).toBe('low-back');
  expect(distanceOf(at('calf-outer'))).toBeGreaterThan(distanceOf(at('thigh-back')));
  expect(distanceOf(at('big-toe'))).toBeGreaterThan(distanceOf(at('calf-outer')));
});

// Centralising and peripheralising as in Aina, May and Clare 2004, Man Ther 9:134 (abstract).
describe('symptoms between two reports', () => {
  test.each([
    { name: 'from calf to buttock', earlier: felt(at('calf-outer')), later: felt(at('buttock')), kind: 'centralising' },
    {
      name: 'from calf and back to the back alone',
      earlier: felt(at('calf-outer'), at('low-back')),
      later: felt(at('low-back')),
      kind: 'centralising',
    },
    { name: 'that are gone', earlier: felt(at('low-back')), later: felt(), kind: 'centralising' },
    { name: 'from thigh to foot', earlier: felt(at('thigh-back')), later: felt(at('sole')), kind: 'peripheralising' },
    { name: 'that are new', earlier: felt(), later: felt(at('low-back')), kind: 'peripheralising' },
    { name: 'at one height', earlier: felt(at('calf-back')), later: felt(at('calf-outer')), kind: 'unchanged' },
    { name: 'nowhere both times', earlier: felt(), later: felt(), kind: 'unchanged' },
    {
      name: 'better on one leg, new on the other',
      earlier: felt(at('sole')),
      later: felt(at('buttock', 'right')),
      kind: 'peripheralising',
    },
    {
      name: 'with places not answered',
      earlier: felt(at('sole')),
      later: { ...felt(), places: 'not-answered' },
      kind: 'unknown',
    },
    {
      name: 'with nothing felt and places not answered',
      earlier: felt(at('sole')),
      later: { ...felt(), intensity: 0, places: 'not-answered' },
      kind: 'centralising',
    },
  ] as const)('$name: $kind', ({ earlier, later, kind }) => {
    expect(symptomShift(earlier, later).kind).toBe(kind);
  });

  const places = fc.uniqueArray(
    fc.record({ region: fc.constantFrom(...BODY_REGIONS), side: fc.constantFrom('left', 'right') } as const),
    {
      maxLength: 5,
      selector: ({ region, side }) => `${region} ${side}`,
    },
  );

  test('mirroring the body changes nothing, and a place further out never centralises', () => {
    const mirrored = (all: readonly Place[]) => all.map(({ region, side }) => at(region, side === 'left' ? 'right' : 'left'));
    fc.assert(
      fc.property(places, places, (before, after) => {
        const { kind } = symptomShift(felt(...before), felt(...after));
        expect(symptomShift(felt(...mirrored(before)), felt(...mirrored(after))).kind).toBe(kind);
        const [from, to] = [mostDistant(before), mostDistant(after)];
        if (to && (!from || distanceOf(to) > distanceOf(from))) expect(kind).toBe('peripheralising');
      }),
    );
  });

  test('said backwards, what moved up moved down when only one leg is concerned', () => {
    const left = places.map((all) => all.map(({ region }) => at(region)));
    const back = { centralising: 'peripheralising', peripheralising: 'centralising', unchanged: 'unchanged', unknown: 'unknown' };
    fc.assert(
      fc.property(left, left, (before, after) => {
        expect(symptomShift(felt(...after), felt(...before)).kind).toBe(back[symptomShift(felt(...before), felt(...after)).kind]);
      }),
    );
  });
});

describe('symptoms over days', () => {
  test('are the extremes of a day and the most distant place of it, the check-in of the morning included', () => {
    const days = symptomsByDay({
      reports: [
        report(2, 10, { intensity: 5, places: [at('calf-back')] }),
        report(2, 9, { intensity: 2, places: [at('buttock')] }),
        report(3, 9, { intensity: 'not-answered', places: 'not-answered' }),
      ],
      checkIns: [checkIn(2, 8, { intensity: 1, places: [] })],
    });
    expect(days).toEqual([
      { day: dayOf(2), least: 1, most: 5, places: [at('buttock'), at('calf-back')], mostDistant: at('calf-back') },
      { day: dayOf(3), least: null, most: null, places: null, mostDistant: null },
    ]);
  });

  test('move from the first day that says where to the last', () => {
    const days = symptomsByDay({
      reports: [
        report(1, 9, { places: [at('sole')] }),
        report(2, 9, { places: [at('thigh-back')] }),
        report(3, 9, { places: 'not-answered', intensity: 4 }),
      ],
      checkIns: [],
    });
    expect(shiftOverDays(days)).toEqual({ kind: 'centralising', from: at('sole'), to: at('thigh-back') });
    expect(shiftOverDays(days.slice(0, 1))).toEqual({ kind: 'unknown' });
  });
});
