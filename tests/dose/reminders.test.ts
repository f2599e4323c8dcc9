import fc from 'fast-check';
import ICAL from 'ical.js';
import { describe, expect, test } from 'vitest';
import { escapedText, foldedLine } from '../../src/dose/icalendar.ts';
import { prescriptionReminders } from '../../src/dose/prescription-reminders.ts';
import { type Reminder, remindersFile } from '../../src/dose/reminders.ts';
import { reminderMinutes, WAKING_DAY } from '../../src/dose/spread.ts';
import { dayOf } from '../symptoms/told.ts';
import { itemId, line, prescription, step } from './plan.ts';

const STAMP = '2026-05-04T07:08:09.123Z';
const reminder = (over: Partial<Reminder> = {}): Reminder => ({
  uid: 'line-1@evenside.invalid',
  fromDay: dayOf(4),
  days: 14,
  inWeek: [dayOf(4)],
  minute: 10 * 60 + 10,
  summary: 'Foot taps',
  description: '15 with the left foot',
  ...over,
});
const eventsOf = (text: string) =>
  new ICAL.Component(ICAL.parse(text)).getAllSubcomponents('vevent').map((each) => new ICAL.Event(each));
const only = (text: string) => {
  const [event] = eventsOf(text);
  if (!event) throw new Error('expected an event');
  return event;
};
function startsOf(text: string): string[] {
  const starts: string[] = [];
  const iterator = only(text).iterator();
  for (let next = iterator.next(); next && starts.length < 100; next = iterator.next()) starts.push(next.toString());
  return starts;
}

describe('a file of reminders', () => {
  test('is read by a calendar as it was meant', () => {
    const event = only(remindersFile([reminder()], STAMP));
    expect(event.uid).toBe('line-1@evenside.invalid');
    expect(event.summary).toBe('Foot taps');
    expect(event.description).toBe('15 with the left foot');
    expect(event.startDate.toString()).toBe('2026-05-04T10:10:00');
    expect(event.component.getFirstPropertyValue('dtstamp')?.toString()).toBe('2026-05-04T07:08:09Z');
    const alarm = event.component.getFirstSubcomponent('valarm');
    expect(alarm?.getFirstPropertyValue('action')).toBe('DISPLAY');
    expect(alarm?.getFirstPropertyValue('description')).toBe('Foot taps');
    expect(alarm?.getFirstPropertyValue('trigger')?.toString()).toBe('PT0S');
  });

  test('has floating times: no zone, nine is nine on the wall wherever one is', () => {
    const { startDate } = only(remindersFile([reminder()], STAMP));
    expect(startDate.zone).toBe(ICAL.Timezone.localTimezone);
    expect(remindersFile([reminder()], STAMP)).not.toContain('TZID');
  });

  test('comes on its weekdays and ends with its last day', () => {
    expect(startsOf(remindersFile([reminder({ inWeek: [dayOf(4), dayOf(6), dayOf(8)] })], STAMP))).toEqual(
      [4, 6, 8, 11, 13, 15].map((n) => `${dayOf(n)}T10:10:00`),
    );
    expect(startsOf(remindersFile([reminder({ days: 1 })], STAMP))).toEqual(['2026-05-04T10:10:00']);
  });

  test('keeps what a text may hold', () => {
    const summary = 'Foot taps; left, then right \\ "slowly"\nthen rest: 10 °, niño 🦶';
    expect(only(remindersFile([reminder({ summary })], STAMP)).summary).toBe(summary);
    fc.assert(
      fc.property(fc.string({ unit: 'grapheme', maxLength: 200 }), (text) => {
        const clean = text.replaceAll(/\p{Cc}/gu, '');
        expect(only(remindersFile([reminder({ description: clean })], STAMP)).description).toBe(clean);
      }),
    );
  });

  test('has no character that would end a line or is not allowed, whatever the text', () => {
    expect(escapedText('a\u0000b\u0007c\td\r\ne')).toBe('abc\td\\ne');
    expect(escapedText('END:VEVENT\r\nBEGIN:VEVENT')).not.toMatch(/[\r\n]/);
  });

  // RFC 5545, 3.1 (from memory), and ical.js reads it back.
  test('has lines of at most 75 octets that end with CRLF, and cuts no character', () => {
    fc.assert(
      fc.property(fc.string({ unit: 'grapheme', maxLength: 400 }), (any) => {
        // The sign of a character cut in two is no part of the text itself.
        const text = any.replaceAll('\ufffd', '');
        const file = remindersFile([reminder({ summary: text })], STAMP);
        expect(file.endsWith('\r\n')).toBe(true);
        for (const row of file.slice(0, -2).split('\r\n')) {
          expect(row).not.toMatch(/[\r\n]/);
          expect(Buffer.byteLength(row)).toBeLessThanOrEqual(75);
        }
        expect(file).not.toContain('\uFFFD');
      }),
    );
    expect(foldedLine('x'.repeat(75))).toBe('x'.repeat(75));
    expect(foldedLine('x'.repeat(76))).toBe(`${'x'.repeat(75)}\r\n x`);
  });
});

describe('the reminders of a prescription', () => {
  const words = () => ({ summary: 'Do it', description: '' });
  test('are spread over the waking day', () => {
    expect(reminderMinutes(3, WAKING_DAY)).toEqual([610, 870, 1130]);
    expect(reminderMinutes(1, WAKING_DAY)).toEqual([870]);
    expect(reminderMinutes(0, WAKING_DAY)).toEqual([]);
  });

  test('are as many as the dose of the day has sets, one for those done together, each with a name of its own', () => {
    const glide = line('nerve-glide');
    const stand = line('heel-stand', { start: { setsADay: 3, repsASet: 5, holdS: 5 } }, 2);
    const plan = prescription(glide, stand);
    const steps = [step(plan, glide, 3, { to: { setsADay: 2, repsASet: 10, holdS: 0 } })];
    const found = prescriptionReminders(plan, { steps }, dayOf(4), words);
    expect(found.map(({ uid, minute }) => [uid, minute])).toEqual([
      [`${itemId(1)}-1@evenside.invalid`, 675],
      [`${itemId(1)}-2@evenside.invalid`, 1065],
      [`${itemId(2)}-1@evenside.invalid`, 870],
    ]);
    expect(found[2]?.inWeek).toEqual([dayOf(4), dayOf(6), dayOf(8)]);
    expect(eventsOf(remindersFile(found, STAMP)).length).toBe(3);
  });
});
