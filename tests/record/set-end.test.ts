import fc from 'fast-check';
import { expect, test } from 'vitest';
import { setEndMs } from '../../src/record/set-end.ts';
import { ms } from '../../src/units.ts';
import { momentOf, rep } from './set-builders.ts';

test('a set ends where its last repetition does', () => {
  expect(setEndMs({ startedAt: momentOf(0), reps: [rep(1), rep(2)] })).toBe(Date.parse(momentOf(0)) + 3200);
  expect(setEndMs({ startedAt: momentOf(0), reps: [] })).toBe(Date.parse(momentOf(0)));
});

test('whatever times a file from elsewhere says, the end is a moment of the calendar and not before the beginning', () => {
  const time = fc.oneof(fc.double({ noNaN: true, noDefaultInfinity: true }), fc.constantFrom(1e308, -1e308, 8.64e15)).map(ms);
  const start = fc.constantFrom(momentOf(0), '+275760-09-13T00:00:00.000Z', '-271821-04-20T00:00:00.000Z');
  fc.assert(
    fc.property(start, time, time, (startedAt, startMs, endMs) => {
      const end = setEndMs({ startedAt, reps: [rep(1, { startMs, endMs })] });
      expect(end).toBeGreaterThanOrEqual(Date.parse(startedAt));
      expect(() => new Date(end).toISOString()).not.toThrow();
    }),
  );
});
