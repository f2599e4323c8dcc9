/**
 * Long sets in front of the (fake) camera, which shows a clip's repetitions over and over: what the page and its worker hold does not grow beyond what a set keeps
 * of its pictures, nothing queues, and the count is right at the end. `EVENSIDE_SOAK_MINUTES=30 npm test -- --only browser tests/browser/soak` is the long one.
 */
import { join } from 'node:path';
import type { Page } from 'playwright-core';
import { describe, expect, test } from 'vitest';
import { truthOf } from '../clips/truth.ts';
import type { ClipPart } from './fake-camera.ts';
import { siteForTests } from './harness.ts';
import { type HeapWatch, watchHeaps } from './heap-watch.ts';
import { type Slope, slopeOf } from './slope.ts';
import { storedResults } from './stored-results.ts';

/** In the usual run a set is long enough for its count, and too short for a slope: see `LEAST_FOR_SLOPES`. */
const ON_DEMAND = process.env.EVENSIDE_SOAK_MINUTES;
const MINUTES = Number(ON_DEMAND ?? 0.5);
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

/** What went to the worker and came back since it was last asked. */
interface Traffic {
  answered: number;
  delaySumMs: number;
  worstDelayMs: number;
  mostOutstanding: number;
}

declare global {
  interface Window {
    takeTraffic: () => Traffic;
  }
}

/** Runs in the page before its own scripts: how long after it was there a picture's answer came, the fastest way of a picture to the worker left out. */
function watchDelays(): void {
  const none = (): Traffic => ({ answered: 0, delaySumMs: 0, worstDelayMs: 0, mostOutstanding: 0 });
  let traffic = none();
  let leastMs = Number.POSITIVE_INFINITY;
  const asked = new Map<unknown, number>();
  window.takeTraffic = () => {
    const taken = traffic;
    traffic = none();
    return taken;
  };
  window.Worker = class extends window.Worker {
    constructor(url: string | URL, options?: WorkerOptions) {
      super(url, options);
      this.addEventListener('message', ({ data }) => {
        const tMs = asked.get(data.id);
        if (tMs === undefined) return;
        asked.delete(data.id);
        const delayMs = performance.now() - tMs - leastMs;
        traffic.answered += 1;
        traffic.delaySumMs += delayMs;
        traffic.worstDelayMs = Math.max(traffic.worstDelayMs, delayMs);
      });
    }
    override postMessage(message: unknown, rest?: unknown): void {
      const { id, path, argumentList } = message as { id?: unknown; path?: string[]; argumentList?: { value: unknown }[] };
      if (path?.at(-1) === 'observe') {
        const tMs = Number(argumentList?.[2]?.value);
        leastMs = Math.min(leastMs, performance.now() - tMs);
        asked.set(id, tMs);
        traffic.mostOutstanding = Math.max(traffic.mostOutstanding, asked.size);
      }
      super.postMessage(message, rest as Transferable[]);
    }
  };
}

interface Reading {
  readonly minutes: number;
  readonly pageMb: number;
  readonly pageBuffersMb: number;
  readonly workerMb: number;
  readonly workerBuffersMb: number;
  readonly delayMs: number;
  readonly worstDelayMs: number;
  readonly mostOutstanding: number;
  readonly perSecond: number;
}

async function readingsOf(page: Page, heaps: HeapWatch, worker: string, again: () => Promise<void>): Promise<readonly Reading[]> {
  const readings: Reading[] = [];
  const startMs = Date.now();
  await page.evaluate(() => window.takeTraffic());
  // As often as the shortest run needs for a line; never more than every ten seconds, since a collection holds everything up.
  const everyMs = Math.max(10_000, (MINUTES * 60_000) / 60);
  let lastMs = startMs;
  while (Date.now() - startMs < MINUTES * 60_000) {
    await page.waitForTimeout(everyMs);
    const { answered, delaySumMs, worstDelayMs, mostOutstanding } = await page.evaluate(() => window.takeTraffic());
    const nowMs = Date.now();
    const [own, others] = [await heaps.page(), await heaps.worker(worker)];
    if (!others) throw new Error(`readingsOf requires a worker ${worker}, got none`);
    readings.push({
      minutes: (nowMs - startMs) / 60_000,
      pageMb: own.objectsMb,
      pageBuffersMb: own.buffersMb,
      workerMb: others.objectsMb,
      workerBuffersMb: others.buffersMb,
      delayMs: delaySumMs / Math.max(1, answered),
      worstDelayMs,
      mostOutstanding,
      perSecond: (answered * 1000) / (nowMs - lastMs),
    });
    lastMs = nowMs;
    // Ended, because the machine stalled after the dose: another set follows in the same page.
    if (page.url().includes('#/set/')) await again();
    // What the collection itself held up does not count.
    await page.waitForTimeout(1000);
    await page.evaluate(() => window.takeTraffic());
  }
  return readings;
}

/** How the peaks that were counted stand to those that were shown; the camera's clock drifts a little against the clip's. */
function againstTruth(peaksMs: readonly number[], trueMs: readonly number[], loopMs: number): { missed: number; extra: number } {
  const first = peaksMs[0] ?? 0;
  const near = Math.min(...trueMs.slice(1).map((t, i) => t - (trueMs[i] as number))) / 2;
  const counts = trueMs.map((_, start) => {
    // The next one that was shown: its number since the first one counted, and when it was, on the set's clock.
    const shown = (n: number) => {
      const at = start + n;
      return (trueMs[at % trueMs.length] as number) + Math.floor(at / trueMs.length) * loopMs - (trueMs[start] as number);
    };
    let driftMs = first;
    let n = 0;
    let extra = 0;
    let missed = 0;
    for (const peakMs of peaksMs) {
      while (peakMs - (shown(n) + driftMs) > near) {
        n += 1;
        missed += 1;
      }
      const off = peakMs - (shown(n) + driftMs);
      if (off < -near) {
        extra += 1;
        continue;
      }
      driftMs += 0.3 * off;
      n += 1;
    }
    return { missed, extra };
  });
  return counts.reduce((best, each) => (each.missed + each.extra < best.missed + best.extra ? each : best));
}

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
    await page.addInitScript(watchDelays);
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
    const readings = await readingsOf(page, heaps, worker, () => anotherSet(page));
    const live = Number(await page.locator('.count-number').textContent());
    await page.getByRole('button', { name: /^Stop/ }).click();
    await page.waitForURL(/#\/set\//);
    await page.getByText('Every repetition').waitFor();

    const sets = (await storedResults(page)).map(({ result }) => result.reps.filter(({ complete }) => complete));
    const reps = sets.flat();
    const { reps: shown } = truthOf(clip);
    const found = sets
      .map((set) =>
        againstTruth(
          set.map(({ peakMs }) => peakMs),
          shown.map(({ peakMs }) => peakMs - part.fromMs),
          part.toMs - part.fromMs,
        ),
      )
      .reduce((sum, each) => ({ missed: sum.missed + each.missed, extra: sum.extra + each.extra }));
    const kept = readings.slice(Math.floor(readings.length / 4));
    const slope = (of: (reading: Reading) => number) => slopeOf(kept.map((reading) => [reading.minutes, of(reading)]));
    const most = (of: (reading: Reading) => number) => Math.max(...readings.map(of));
    if (kept.length >= 3) {
      const lines = [
        `${MINUTES} minutes, ${readings.length} readings, ${reps.length} counted in ${sets.length} sets (live ${live} of the last), ${JSON.stringify(found)}`,
        `pictures answered a second: ${readings.map(({ perSecond }) => perSecond.toFixed(1)).join(' ')}`,
        `page: ${told(
          slope(({ pageMb }) => pageMb),
          'MB',
        )}, at the end ${kept.at(-1)?.pageMb.toFixed(1)} MB`,
        `its buffers: ${told(
          slope(({ pageBuffersMb }) => pageBuffersMb),
          'MB',
        )}, at the end ${kept.at(-1)?.pageBuffersMb.toFixed(1)} MB`,
        `worker: ${told(
          slope(({ workerMb }) => workerMb),
          'MB',
        )}, at the end ${kept.at(-1)?.workerMb.toFixed(1)} MB`,
        `its buffers: ${told(
          slope(({ workerBuffersMb }) => workerBuffersMb),
          'MB',
        )}, at the end ${kept.at(-1)?.workerBuffersMb.toFixed(1)} MB`,
        `delay: ${told(
          slope(({ delayMs }) => delayMs),
          'ms',
        )}, worst ${most(({ worstDelayMs }) => worstDelayMs).toFixed(0)} ms`,
      ];
      for (const line of lines) console.log(line);
    }

    expect(reps.length).toBeGreaterThan(DOSE);
    expect(found).toEqual({ missed: 0, extra: 0 });
    expect(sets.map((set) => set.length)).toContain(live);
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
    expect(surely(({ delayMs }) => delayMs)).toBeLessThan(DELAY_MS_A_MINUTE);
  });
});
