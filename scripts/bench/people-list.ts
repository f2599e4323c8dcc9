import type { Browser, BrowserContext } from 'playwright-core';
import { launchChromium } from '../chromium.ts';
import { serveSite } from '../serve-site.ts';
import { fillWithPeople, type ManyPeople } from './many-people.ts';
import { type Spread, spreadOf } from './spread.ts';

/** A practice as full as one machine's is likely to get. */
export const FULL: ManyPeople = { people: 500, setsEach: 400, withFacts: true };
const ROUNDS = 7;
/** Scripts that follow the first picture belong to opening, too. Chosen. */
const SETTLED_MS = 1500;
const WHEEL_STEPS = 60;
const WHEEL_PX = 600;

export interface PeopleListCost {
  /** Seconds of scripts from the page's start until its list stands, of nobody and of many; one of each a round. */
  readonly emptyS: readonly number[];
  readonly fullS: readonly number[];
  /** Between two pictures while the list of many is scrolled, ms. */
  readonly frames: Spread;
}

async function scriptSeconds(context: BrowserContext, url: string, sign: string): Promise<number> {
  const page = await context.newPage();
  const devtools = await context.newCDPSession(page);
  await devtools.send('Performance.enable');
  await page.goto(url);
  await page.getByText(sign).first().waitFor();
  await page.waitForTimeout(SETTLED_MS);
  const { metrics } = await devtools.send('Performance.getMetrics');
  await page.close();
  const found = metrics.find(({ name }) => name === 'ScriptDuration');
  if (!found) throw new Error('scriptSeconds requires the browser to count ScriptDuration, it does not');
  return found.value;
}

async function scrolledFrames(context: BrowserContext, url: string): Promise<Spread> {
  const page = await context.newPage();
  await page.goto(url);
  await page.getByText('500 people').waitFor();
  await page.waitForTimeout(SETTLED_MS);
  await page.evaluate(() => {
    const times: number[] = [];
    Object.assign(window, { frameTimes: times });
    const clock = {
      next(now: number) {
        times.push(now);
        requestAnimationFrame(clock.next);
      },
    };
    requestAnimationFrame(clock.next);
  });
  for (let i = 0; i < WHEEL_STEPS; i += 1) {
    await page.mouse.wheel(0, WHEEL_PX);
    await page.waitForTimeout(16);
  }
  const times = await page.evaluate(() => (window as unknown as { readonly frameTimes: readonly number[] }).frameTimes);
  await page.close();
  return spreadOf(times.slice(1).map((now, i) => now - (times[i] as number)));
}

async function filled(browser: Browser, url: string): Promise<BrowserContext> {
  const context = await browser.newContext({ locale: 'en', serviceWorkers: 'block' });
  const page = await context.newPage();
  await page.goto(url);
  await fillWithPeople(page, FULL);
  await page.close();
  return context;
}

/** Opens the list of people again and again, of nobody and of many by turns. */
export async function peopleListCost(root: string, executable: string): Promise<PeopleListCost> {
  const site = await serveSite(root, 0);
  if (!site.ok) throw new Error(`peopleListCost requires a free port, got ${site.error.kind}`);
  const browser = await launchChromium(executable);
  try {
    const url = new URL('#/people', site.value.url).href;
    const many = await filled(browser, url);
    const nobody = await browser.newContext({ locale: 'en', serviceWorkers: 'block' });
    const [emptyS, fullS]: [number[], number[]] = [[], []];
    for (let round = 0; round < ROUNDS; round += 1) {
      emptyS.push(await scriptSeconds(nobody, url, 'Nobody is here yet'));
      fullS.push(await scriptSeconds(many, url, '500 people'));
    }
    return { emptyS, fullS, frames: await scrolledFrames(many, url) };
  } finally {
    await browser.close();
    await site.value.close();
  }
}
