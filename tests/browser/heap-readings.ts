import type { Page } from 'playwright-core';
import type { HeapWatch } from './heap-watch.ts';
import type { Asked } from './picture-times.ts';
import './picture-traffic.ts';

/** What a page and its worker held at one moment. */
export interface Reading {
  readonly minutes: number;
  readonly pageMb: number;
  readonly pageBuffersMb: number;
  readonly workerMb: number;
  readonly workerBuffersMb: number;
  readonly mostOutstanding: number;
  /** Of which pictures it tells, on the page's clock: those answered before the collection held everything up. */
  readonly fromMs: number;
  readonly toMs: number;
  /** When the collection was over. */
  readonly collectedMs: number;
}

export interface Watched {
  readonly readings: readonly Reading[];
  readonly pictures: Asked[];
  /** The time of day at the beginning of the page's clock. */
  readonly originMs: number;
}

/** As many as a line needs, and no more often than every ten seconds: a collection holds everything up. */
const READINGS = 40;

/** Reads what is held again and again for so many minutes. @param again begins another set in the same page, when one has ended */
export async function readingsOf(
  page: Page,
  {
    heaps,
    worker,
    minutes,
    again,
  }: { readonly heaps: HeapWatch; readonly worker: string; readonly minutes: number; readonly again: () => Promise<void> },
): Promise<Watched> {
  const readings: Reading[] = [];
  const pictures: Asked[] = [];
  const take = async () => {
    const traffic = await page.evaluate(() => window.takeTraffic());
    pictures.push(...traffic.pictures);
    return traffic;
  };
  let { nowMs: fromMs, originMs } = await take();
  const startMs = fromMs;
  const everyMs = Math.max(10_000, (minutes * 60_000) / READINGS);
  while (fromMs - startMs < minutes * 60_000) {
    await page.waitForTimeout(everyMs);
    const { mostOutstanding, nowMs } = await take();
    const [own, others] = [await heaps.page(), await heaps.worker(worker)];
    const collectedMs = await page.evaluate(() => performance.now());
    // There may be none between two sets.
    if (others) {
      readings.push({
        minutes: (nowMs - startMs) / 60_000,
        pageMb: own.objectsMb,
        pageBuffersMb: own.buffersMb,
        workerMb: others.objectsMb,
        workerBuffersMb: others.buffersMb,
        mostOutstanding,
        fromMs,
        toMs: nowMs,
        collectedMs,
      });
    }
    // Ended, because the machine stalled after the dose: another set follows in the same page.
    if (page.url().includes('#/set/')) await again();
    // What the collection itself held up does not count.
    await page.waitForTimeout(1000);
    fromMs = (await take()).nowMs;
  }
  return { readings, pictures, originMs };
}
