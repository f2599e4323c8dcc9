import { expect, test } from 'vitest';
import { whenIn } from '../../src/screens/parts/when.ts';

/** Local time, as the screens show it. */
const moment = (year: number) => new Date(year, 10, 25, 13, 5).toISOString();
const NOW = new Date(2026, 11, 31);

test('a moment of this year is told by day and time', () => {
  // Between time and PM stands a narrow space.
  expect(whenIn('en-US', moment(2026), NOW)).toMatch(/^Wed, Nov 25, 1:05\sPM$/);
});

test('a moment of another year is told with it', () => {
  expect(whenIn('en-US', moment(2025), NOW)).toMatch(/^Tue, Nov 25, 2025, 1:05\sPM$/);
});
