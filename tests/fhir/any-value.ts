import fc from 'fast-check';
import { addDays } from '../../src/symptoms/calendar-day.ts';
import { deg, ms } from '../../src/units.ts';
import { dayOf } from '../symptoms/told.ts';

export const whole = (least: number, most: number) => fc.integer({ min: least, max: most });
export const side = fc.constantFrom('left' as const, 'right' as const);
export const origin = fc.constantFrom('own' as const, 'own' as const, 'example' as const);
export const moment = fc
  .date({ min: new Date('2020-01-01T00:00:00.000Z'), max: new Date('2060-01-01T00:00:00.000Z'), noInvalidDate: true })
  .map((date) => date.toISOString());
export const day = whole(0, 4000).map((n) => addDays(dayOf(1), n));
/** Any characters at all, halves of pairs and control characters too. */
export const typed = fc.string({ unit: 'binary', maxLength: 30 });
/** Plus 0: JSON has no negative zero, and a store none to tell. */
export const number = fc
  .oneof(fc.double({ min: -200, max: 200, noNaN: true }), fc.double({ noNaN: true, noDefaultInfinity: true }))
  .map((x) => x + 0);
export const anyDeg = number.map(deg);
export const anyMs = number.map((x) => ms(Math.abs(x)));
export const maybe = <T>(arbitrary: fc.Arbitrary<T>) => fc.option(arbitrary);
export const orNot = <T>(arbitrary: fc.Arbitrary<T>) =>
  fc.oneof({ weight: 5, arbitrary }, { weight: 1, arbitrary: fc.constant('not-answered' as const) });
