/**
 * Long sets in front of the (fake) camera, which shows a clip's repetitions over and over: what the page and its worker hold does not grow beyond what a set keeps
 * of its pictures, nothing queues, and the count is right at the end. `EVENSIDE_SOAK_MINUTES=30 npm test -- --only browser tests/browser/soak` is the long one.
 */
import { join } from 'node:path';
import type { Page } from 'playwright-core';
import { describe, expect, test } from 'vitest';
import { truthOf } from '../clips/truth.ts';
import { againstShown } from './counted-against-shown.ts';
import type { ClipPart } from './fake-camera.ts';
import { siteForTests } from './harness.ts';
import { type Reading, readingsOf } from './heap-readings.ts';
import { watchHeaps } from './heap-watch.ts';
import { aroundMoment, heldUpBy } from './held-up.ts';
import { breaksOf, delaysOf, pageMsOf, setsOf } from './picture-times.ts';
import { watchPictures } from './picture-traffic.ts';
import { type Slope, slopeOf, slopeWithin } from './slope.ts';
import { storedResults } from './stored-results.ts';

/** In the usual run a set is long enough for its count, and too short for a slope: see `LEAST_FOR_SLOPES`. */
const ON_DEMAND = process.env.EVENSIDE_SOAK_MINUTES;
const MINUTES = Number(ON_DEMAND ?? 2);
/** What grows in a shorter run is noise: engines compile and collect as they like in the first minutes. */
const LEAST_FOR_SLOPES = 4;
/** The model starts, and people settle in, as fast as a slow, shared machine allows. */
const START_MS = 120_000;
/** A set goes on after its dose as long as the next repetition comes before it may end; a long run has as large a dose as can be chosen, since a machine may stall. */
const DOSE = MINUTES < 3 ? 10 : 99;

/**
 * A set keeps what it saw of the leg in every picture, to measure all of it once it is over: about 1 kB, 30 times a second. An hour of it may take this much, MB a minute;
 * the worker, and the delay in ms a minute, may not grow at all beyond noise.
 */
const PAGE_MB_A_MINUTE = 3;
const WORKER_MB_A_MINUTE = 0.3;
const DELAY_MS_A_MINUTE = 5;

const mean = (values: readonly number[]) => values.reduce((sum, x) => sum + x, 0) / values.length;
const told = ({ perMinute, within }: Slope, unit: string) => `${perMinute.toFixed(3)} ± ${within.toFixed(3)} ${unit} a minute`;

interface Soak {
  readonly name: string;
  readonly clip: string;
  readonly part: ClipPart;
  readonly exercise: string;
  readonly worker: string;
}

const SOAKS: readonly Soak[] = [
  // The pause of each round is long enough to be found ready, and too short for the set to end.
  {
    name: 'foot taps',
    clip: 'taps-right-weak',
    part: { fromMs: 1050, toMs: 15_300 },
    exercise: 'foot-tap',
    worker: 'pose-worker',
  },
  {
    name: 'big toe lifts by stickers',
    clip: 'toe-right-weak',
    part: { fromMs: 1000, toMs: 10_750 },
    exercise: 'toe-lift',
    worker: 'sticker-worker',
  },
];

// The usual run has no time for both.
describe.each(ON_DEMAND === undefined ? SOAKS.slice(0, 1) : SOAKS)('a long set of $name', ({ clip, part, exercise, worker }) => {
  const site = siteForTests({ camera: join('tests', 'clips', `${clip}.mp4`), cameraPart: part });

  async function toCounting(page: Page): Promise<void> {
    await page.evaluate((choices) => localStorage.setItem('evenside.choices', JSON.stringify(choices)), {
      exercise,
      side: 'right',
      targetReps: DOSE,
    });
    await page.addInitScript(watchPictures);
    await page.reload();
    await page.getByRole('button', { name: 'Start the camera' }).click();
    await page.getByRole('button', { name: 'None of these' }).click();
    await untilCounting(page);
  }

  async function anotherSet(page: Page): Promise<void> {
    await page.goto(`${site.url()}#/choose/camera`);
    await page.getByRole('button', { name: 'Start the camera' }).click();
    await untilCounting(page);
  }

  async function untilCounting(page: Page): Promise<void> {
    if (worker === 'sticker-worker') {
      await page.getByText('Three seen', { exact: true }).waitFor();
      await page.getByRole('button', { name: 'Start the set' }).click();
    }
    await page.locator('.phase-banner[data-stage="counting"]').waitFor({ timeout: START_MS });
  }

  test('is counted right to its end, and nothing of it queues or grows', {
    timeout: MINUTES * 60_000 + 2 * START_MS,
  }, async () => {
    const { page, pageErrors } = await site.open('#/choose/camera');
    const heaps = await watchHeaps(page);
    await toCounting(page);
    const { readings, pictures, originMs } = await readingsOf(page, {
      heaps,
      worker,
      minutes: MINUTES,
      again: () => anotherSet(page),
    });
    const live = Number(await page.locator('.count-number').textContent());
    await page.getByRole('button', { name: /^Stop/ }).click();
    await page.waitForURL(/#\/set\//);
    await page.getByText('Every repetition').waitFor();
    pictures.push(...(await page.evaluate(() => window.takeTraffic())).pictures);

    // Stickers are looked at before a set too.
    const watched = setsOf(pictures);
    const sets = (await storedResults(page)).map(({ startedAt, result }) => {
      const startMs = Date.parse(startedAt) - originMs;
      const its = watched.findLast(([first]) => first !== undefined && first.fromMs <= startMs);
      if (!its) throw new Error(`a stored set requires pictures, got none before ${startedAt}`);
      return { its, moved: result.reps, reps: result.reps.filter(({ complete }) => complete) };
    });
    const reps = sets.flatMap((set) => set.reps);
    const { reps: shown } = truthOf(clip);
    const unlike = sets.map(({ its, reps }) =>
      againstShown(
        reps.map(({ peakMs }) => pageMsOf(its, peakMs)),
        {
          peaksMs: shown.map(({ peakMs }) => peakMs - part.fromMs),
          roundMs: part.toMs - part.fromMs,
          breaks: breaksOf(its),
        },
      ),
    );
    const later = readings.slice(Math.floor(readings.length / 4));
    const slope = (of: (reading: Reading) => number) => slopeOf(later.map((reading) => [reading.minutes, of(reading)]));
    const most = (of: (reading: Reading) => number) => Math.max(...readings.map(of));
    const within = ({ fromMs, toMs }: Reading, ms: number) => ms > fromMs && ms <= toMs;
    // What holds pictures up while a set begins is no growth.
    const delays = sets.map(({ its }) =>
      later.flatMap((reading) => {
        const ms = delaysOf(its).flatMap(({ answeredMs, delayMs }) => (within(reading, answeredMs) ? [delayMs] : []));
        return ms.length > 0 ? [{ minutes: reading.minutes, meanMs: mean(ms), worstMs: Math.max(...ms) }] : [];
      }),
    );
    const slopeOfDelays = () => slopeWithin(delays.map((set) => set.map(({ minutes, meanMs }) => [minutes, meanMs])));
    for (const [i, { missedMs, extraMs }] of unlike.entries()) {
      const { its, moved } = sets[i] as (typeof sets)[number];
      for (const line of [...missedMs, ...extraMs].map((tMs) => aroundMoment(tMs, { its, moved, readings }))) console.log(line);
    }
    // A short run whose machine stalls may have several sets, and too few readings for a line.
    if (later.length >= 3 && delays.flat().length > delays.length + 1) {
      const lines = [
        `${MINUTES} minutes, ${readings.length} readings, ${reps.length} counted in ${sets.length} sets (live ${live} of the last), ${JSON.stringify(unlike.map(({ missedMs, extraMs }) => [missedMs.length, extraMs.length]))}`,
        `breaks: ${sets.map(({ its }) => its.length - 1).join(' ')}; held up by a collection: ${sets.map(({ its }) => heldUpBy(readings, its).length).join(' ')}`,
        `pictures answered a second: ${readings
          .map((reading) => {
            const answered = pictures.filter(({ answeredMs }) => within(reading, answeredMs)).length;
            return ((answered * 1000) / (reading.toMs - reading.fromMs)).toFixed(1);
          })
          .join(' ')}`,
        `page: ${told(
          slope(({ pageMb }) => pageMb),
          'MB',
        )}, at the end ${later.at(-1)?.pageMb.toFixed(1)} MB`,
        `its buffers: ${told(
          slope(({ pageBuffersMb }) => pageBuffersMb),
          'MB',
        )}, at the end ${later.at(-1)?.pageBuffersMb.toFixed(1)} MB`,
        `worker: ${told(
          slope(({ workerMb }) => workerMb),
          'MB',
        )}, at the end ${later.at(-1)?.workerMb.toFixed(1)} MB`,
        `its buffers: ${told(
          slope(({ workerBuffersMb }) => workerBuffersMb),
          'MB',
        )}, at the end ${later.at(-1)?.workerBuffersMb.toFixed(1)} MB`,
        `delay within a set: ${told(slopeOfDelays(), 'ms')}, mean ${mean(delays.flat().map(({ meanMs }) => meanMs)).toFixed(0)} ms, worst ${Math.max(
          ...delays.flat().map(({ worstMs }) => worstMs),
        ).toFixed(0)} ms`,
      ];
      for (const line of lines) console.log(line);
    }

    expect(reps.length).toBeGreaterThan(DOSE);
    expect(unlike).toEqual(sets.map(() => ({ missedMs: [], extraMs: [] })));
    // All that was shown is kept; one may have been on its way back when the count was read and the button pressed.
    const kept = sets.at(-1)?.reps.length ?? 0;
    expect(kept - live).toBeOneOf([0, 1]);
    expect(most(({ mostOutstanding }) => mostOutstanding)).toBe(1);
    expect(pageErrors).toEqual([]);
    if (MINUTES < LEAST_FOR_SLOPES) return;
    const surely = (of: (reading: Reading) => number) => slope(of).perMinute - slope(of).within;
    expect(surely(({ pageMb }) => pageMb)).toBeLessThan(PAGE_MB_A_MINUTE);
    for (const of of [
      ({ pageBuffersMb }: Reading) => pageBuffersMb,
      ({ workerMb }: Reading) => workerMb,
      ({ workerBuffersMb }: Reading) => workerBuffersMb,
    ]) {
      expect(surely(of)).toBeLessThan(WORKER_MB_A_MINUTE);
    }
    const grows = slopeOfDelays();
    expect(grows.perMinute - grows.within).toBeLessThan(DELAY_MS_A_MINUTE);
  });
});
