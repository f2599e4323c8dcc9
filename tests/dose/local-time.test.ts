import { describe, expect, test } from 'vitest';
import { localTime } from '../../src/dose/local-time.ts';

const at = (moment: string, timeZone: string) => localTime({ nowMs: Date.parse(moment), timeZone });

describe('the wall clock', () => {
  test.each([
    ['2026-05-04T22:30:00Z', 'Europe/Madrid', '2026-05-05', 30],
    ['2026-05-04T22:30:00Z', 'America/New_York', '2026-05-04', 18 * 60 + 30],
    ['2026-05-04T22:00:00Z', 'Europe/Madrid', '2026-05-05', 0],
    ['2026-01-01T00:15:00Z', 'UTC', '2026-01-01', 15],
    ['2026-05-04T20:00:00Z', 'Asia/Kathmandu', '2026-05-05', 105],
  ] as const)('of %s in %s is %s, minute %i', (moment, zone, day, minute) => {
    expect(at(moment, zone)).toEqual({ day, minute });
  });

  test('jumps an hour when summer time begins, and repeats one when it ends', () => {
    expect(at('2026-03-29T00:59:00Z', 'Europe/Madrid').minute).toBe(119);
    expect(at('2026-03-29T01:00:00Z', 'Europe/Madrid').minute).toBe(180);
    expect(at('2026-10-25T00:30:00Z', 'Europe/Madrid')).toEqual({ day: '2026-10-25', minute: 150 });
    expect(at('2026-10-25T01:30:00Z', 'Europe/Madrid')).toEqual({ day: '2026-10-25', minute: 150 });
  });

  test('of a zone that does not exist is a bug', () => {
    expect(() => at('2026-05-04T22:30:00Z', 'Nowhere/Town')).toThrow(RangeError);
  });
});
