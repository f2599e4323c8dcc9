/**
 * Counting from few pictures a second, as a slow camera or machine gives them. In the usual run one clip at the usual tempo, at 8 a second;
 * `EVENSIDE_RATES=30,15,8,5 npm test -- --only browser tests/browser/frame-rates` tells of every clip at each rate.
 */
import { readdirSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { type ClipTruth, clipPath, exerciseOfClip, truthOf } from '../clips/truth.ts';
import { clipWatcherForTests } from './clip-watcher.ts';

const RATES = (process.env.EVENSIDE_RATES ?? '').split(',').filter(Boolean).map(Number);
const IDS = readdirSync(join(import.meta.dirname, '..', 'clips'))
  .filter((name) => name.endsWith('.truth.json'))
  .map((name) => name.replace('.truth.json', ''));
/** Movements that take less than this from start to end are quick; normal tempo is all else. At 8 a second a quick one has four pictures. Chosen. */
const QUICK_MS = 800;

const clips = clipWatcherForTests();

const isQuick = ({ reps }: ClipTruth) => reps.some(({ startMs, endMs }) => endMs - startMs < QUICK_MS);

async function countAt(id: string, aSecond: number): Promise<number> {
  const truth = truthOf(id);
  const order = { exercise: exerciseOfClip(truth), side: truth.side, model: 'full', poseEvery: 1, aSecond } as const;
  return (await clips.measured(clipPath(id), order)).count;
}

test('eight pictures a second are enough for foot taps at the usual tempo', async () => {
  const id = 'taps-right-weak';
  expect(await countAt(id, 8)).toBe(truthOf(id).reps.length);
});

describe.runIf(RATES.length > 0)('every clip', () => {
  describe.each(RATES)('at %d pictures a second', (aSecond) => {
    test.concurrent.each(IDS)('%s', async (id) => {
      const truth = truthOf(id);
      const count = await countAt(id, aSecond);
      console.log(`RATE ${aSecond} ${id}: ${count} of ${truth.reps.length}`);
      // Under 8, and of quick movements, the figure is told and nothing is claimed.
      if (aSecond >= 8 && !isQuick(truth)) expect(count).toBe(truth.reps.length);
    });
  });
});
