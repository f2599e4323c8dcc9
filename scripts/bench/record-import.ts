import { mkdtemp, rm, stat, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { Browser, CDPSession, Page } from 'playwright-core';
import { writeRecord } from '../../src/record/file/write-record.ts';
import { launchChromium } from '../chromium.ts';
import { serveSite } from '../serve-site.ts';
import { manySets } from './many-sets.ts';
import { stopWatch, type Took } from './processor-time.ts';
import { RECORD_SETS } from './record-file.ts';

const PASSPHRASE = 'ten grey herons by the weir';
/** How often the memory is looked at, ms. */
const LOOK_MS = 200;
/** Long enough for a machine that is busy with other things. */
const PATIENCE_MS = 300_000;

/** What a record of many sets costs in a browser, from the file to the database and back. */
export interface RecordImportCost {
  readonly fileBytes: number;
  /** Reading and checking the file, until the screen says what is in it. */
  readonly checked: Took;
  /** What taking it in would do, against all that is here. */
  readonly looked: Took;
  /** From the button until all of it is on the disk. */
  readonly taken: Took;
  /** From the button until the file is saved. */
  readonly saved: Took;
  /** `JSON.parse` of the same sets as plain JSON, in the same page. */
  readonly parsed: Took;
  /** The most that the page held beyond what it held before, its heap and buffers with garbage that was not collected yet, the file included. */
  readonly peakBytes: number;
}

export interface RecordImportCase {
  /** The database under the passphrase lock. */
  readonly locked: boolean;
  /** The file under a passphrase. */
  readonly sealed: boolean;
}

const press = (page: Page, name: string) => page.getByRole('button', { name, exact: true }).click({ timeout: PATIENCE_MS });

async function passphrase(page: Page): Promise<void> {
  await page.getByLabel('Passphrase', { exact: true }).fill(PASSPHRASE);
  await page.getByLabel('The same once more').fill(PASSPHRASE);
}

/** Looks at the page's memory until it is told to stop. */
async function watchedPeak(session: CDPSession): Promise<() => Promise<number>> {
  const held = async () => {
    const { usedSize, backingStorageSize } = await session.send('Runtime.getHeapUsage');
    return usedSize + backingStorageSize;
  };
  await session.send('HeapProfiler.collectGarbage');
  const before = await held();
  let [peak, going] = [before, true];
  const watching = (async () => {
    while (going) {
      peak = Math.max(peak, await held());
      await new Promise((resolve) => setTimeout(resolve, LOOK_MS));
    }
  })();
  return async () => {
    going = false;
    await watching;
    return peak - before;
  };
}

async function parse(page: Page, count: number): Promise<void> {
  const one = JSON.stringify([...manySets(100)]);
  await page.evaluate(
    ({ text, times }) => {
      let sum = 0;
      for (let i = 0; i < times; i += 1) sum += (JSON.parse(text) as readonly unknown[]).length;
      if (sum === 0) throw new Error('parse requires sets to be there, got none');
    },
    { text: one, times: count / 100 },
  );
}

async function costOf(
  browser: Browser,
  url: string,
  file: string,
  count: number,
  how: RecordImportCase,
): Promise<RecordImportCost> {
  const context = await browser.newContext({ locale: 'en', serviceWorkers: 'block', acceptDownloads: true });
  const page = await context.newPage();
  page.setDefaultTimeout(PATIENCE_MS);
  try {
    if (how.locked) {
      await page.goto(`${url}#/lock`);
      await passphrase(page);
      await press(page, 'Turn the lock on');
      await page.getByText('The lock is on.').waitFor();
    }
    await page.goto(`${url}#/bring`);
    await page.locator('.record-drop').waitFor();
    const watch = await stopWatch(browser);
    await parse(page, count);
    const parsed = await watch.lap();
    const session = await context.newCDPSession(page);
    const peak = await watchedPeak(session);
    await watch.lap();
    await page.locator('.record-drop input').setInputFiles(file);
    if (how.sealed) {
      await page.getByText('This record is sealed.').waitFor();
      await page.getByLabel('Passphrase', { exact: true }).fill(PASSPHRASE);
      await watch.lap();
      await press(page, 'Open it');
    }
    await page.getByRole('heading', { name: 'What is in it' }).waitFor();
    const checked = await watch.lap();
    await page.getByText('New here').waitFor();
    const looked = await watch.lap();
    await press(page, 'Take it in');
    await page.getByText('It is taken in.').waitFor();
    const taken = await watch.lap();
    const peakBytes = await peak();

    await page.goto(`${url}#/send`);
    await page.getByLabel('Name or code in the file').waitFor();
    if (how.sealed) await passphrase(page);
    else await page.getByText('Whoever has the file').click();
    const waiting = page.waitForEvent('download');
    await watch.lap();
    await press(page, 'Save the file');
    await waiting;
    const saved = await watch.lap();
    return { fileBytes: (await stat(file)).size, checked, looked, taken, saved, parsed, peakBytes };
  } finally {
    await context.close();
  }
}

function* pages(count: number) {
  const all = [...manySets(count)];
  for (let n = 0; n < count; n += 100) yield all.slice(n, n + 100);
}

/** Takes a record of many sets in through the built site's own screens, and saves it again. */
export async function recordImportCost(
  root: string,
  executable: string,
  how: RecordImportCase,
  count = RECORD_SETS,
): Promise<RecordImportCost> {
  const folder = await mkdtemp(join(tmpdir(), 'evenside-'));
  const site = await serveSite(root, 0);
  if (!site.ok) throw new Error(`recordImportCost requires a free port, got ${site.error.kind}`);
  try {
    const file = join(folder, 'evenside-record-2026-05-09.zip');
    const person = { ids: ['00000000-0000-4000-8400-000000000001'], name: null, affectedSide: null };
    const record = { createdAt: new Date().toISOString(), person, diary: [], pages: pages(count) };
    await writeFile(file, await writeRecord(record, how.sealed ? PASSPHRASE : null, crypto));
    const browser = await launchChromium(executable);
    try {
      return await costOf(browser, site.value.url, file, count, how);
    } finally {
      await browser.close();
    }
  } finally {
    await site.value.close();
    await rm(folder, { recursive: true });
  }
}
