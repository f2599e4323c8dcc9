import { expect, test } from 'vitest';
import { NO_RATE, type PictureRate, seePicture } from '../../src/screens/set/picture-rate.ts';
import { ms } from '../../src/units.ts';

/** Pictures of each rate in turn, for `lastsMs` each. @returns whether they were few, at the end of each */
function fewAt(rates: readonly number[], lastsMs = 12_000): readonly boolean[] {
  let rate: PictureRate = NO_RATE;
  let tMs = 0;
  return rates.map((aSecond) => {
    for (const end = tMs + lastsMs; tMs < end; tMs += 1000 / aSecond) rate = seePicture(rate, ms(tMs));
    return rate.few;
  });
}

test('five pictures a second are few, eight are not; between the two it stays as it was', () => {
  expect(fewAt([5])).toEqual([true]);
  expect(fewAt([8])).toEqual([false]);
  expect(fewAt([30, 5, 8, 10, 8])).toEqual([false, true, true, false, false]);
});

test('nothing is said of the first seconds', () => {
  expect(fewAt([2], 4000)).toEqual([false]);
});
