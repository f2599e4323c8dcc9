import ICAL from 'ical.js';
import { expect, test } from 'vitest';
import type { HandSet } from '../../src/dose/done-set.ts';
import { calendarSets, setsCalendar } from '../../src/record/sets-calendar.ts';
import type { StoredSet } from '../../src/record/stored-set.ts';
import { entry } from '../symptoms/told.ts';
import { edit, header, idOf, rep, result } from './set-builders.ts';

const STAMP = '2026-05-04T07:08:09.123Z';
const stored = (over: Partial<StoredSet> = {}): StoredSet => {
  const reps = over.reps ?? [rep(1), rep(2)];
  return { ...header(), state: 'finished', reps, result: result(reps), edits: [], ...over };
};
const byHand = (over: Partial<HandSet> = {}): HandSet => ({
  ...entry(3, 9),
  kind: 'hand-set',
  exercise: 'toe-lift',
  side: 'right',
  itemId: null,
  reps: 15,
  counted: 'by-hand',
  ...over,
});
/** As a calendar program of the npm registry, ical.js, reads it. */
const eventsOf = (text: string) =>
  new ICAL.Component(ICAL.parse(text)).getAllSubcomponents('vevent').map((each) => new ICAL.Event(each));

test('a calendar reads done sets at their own moments, from the first repetition to the last', () => {
  const hand = byHand();
  const sets = calendarSets([stored()], [hand]);
  const events = eventsOf(setsCalendar(sets, ({ reps, side }) => `${reps}, ${side}; done`, STAMP));
  const told = events.map(({ uid, summary, startDate, endDate }) => [uid, summary, `${startDate}`, `${endDate}`]);
  expect(told).toEqual([
    [`${idOf(1)}@evenside.invalid`, '2, left; done', '2026-03-01T00:00:00Z', '2026-03-01T00:00:03Z'],
    [`${hand.id}@evenside.invalid`, '15, right; done', '2026-05-03T09:00:00Z', '2026-05-03T09:00:00Z'],
  ]);
  expect(setsCalendar(sets, () => 'x', STAMP)).not.toMatch(/VALARM|ATTENDEE|ORGANIZER/);
});

test('written again after a change by hand, an event keeps its name and tells the new count', () => {
  const before = calendarSets([stored()], []);
  const after = calendarSets([stored({ edits: [edit({ kind: 'add' })] })], []);
  expect(after.map(({ id, reps }) => [id, reps])).toEqual(before.map(({ id, reps }) => [id, reps + 1]));
});

test('an invented set, and one in which nothing counted, stand in no calendar', () => {
  expect(calendarSets([stored({ source: 'example' }), stored({ id: idOf(2), reps: [] })], [])).toEqual([]);
  expect(calendarSets([], [byHand({ origin: 'example' }), byHand({ reps: 0 })])).toEqual([]);
});
