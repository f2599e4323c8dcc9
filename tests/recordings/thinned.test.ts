import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { measureRecording } from '../../src/record/measure-recording.ts';
import { decodeRecording } from '../../src/record/recording.ts';
import { truthOf } from '../clips/truth.ts';

const FOLDER = join(import.meta.dirname, '../../recordings');
const IDS = readdirSync(FOLDER)
  .filter((name) => name.endsWith('.json'))
  .map((name) => name.replace('.json', ''));

/** How many of a recording's movements are counted when only so many observations a second are left of it. */
function countAt(id: string, aSecond: number): number {
  const decoded = decodeRecording(readFileSync(join(FOLDER, `${id}.json`), 'utf8'));
  if (!decoded.ok) throw new Error(`${id} is no recording: ${JSON.stringify(decoded.error)}`);
  let taken = 0;
  const observations = decoded.value.observations.filter(({ tMs }) => {
    if (tMs + 1 < (taken * 1000) / aSecond) return false;
    taken = Math.floor(((tMs + 1) * aSecond) / 1000) + 1;
    return true;
  });
  return measureRecording({ ...decoded.value, observations }).count;
}

test.each(IDS.filter((id) => id !== 'taps-left-quick'))(
  'at 15 and at 8 observations a second the count stays right: %s',
  (id) => {
    const { reps } = truthOf(id);
    expect({ at15: countAt(id, 15), at8: countAt(id, 8) }).toEqual({ at15: reps.length, at8: reps.length });
  },
);

test('quick taps, half a second each, are counted right at 15 a second', () => {
  expect(countAt('taps-left-quick', 15)).toBe(truthOf('taps-left-quick').reps.length);
});
