import { launchChromium } from '../chromium.ts';
import { serveSite } from '../serve-site.ts';
import type { BenchAnswer, BenchOrder } from './page-protocol.ts';

/** Runs the bench's page of the built site in a headless browser. */
export async function benchInBrowser(
  root: string,
  executable: string,
  clip: string,
  order: BenchOrder,
  log: (line: string) => void,
): Promise<{ readonly answer: BenchAnswer; readonly version: string }> {
  const site = await serveSite(root, 0);
  if (!site.ok) throw new Error(`benchInBrowser requires a free port, got ${site.error.kind}`);
  try {
    const browser = await launchChromium(executable);
    try {
      const page = await browser.newPage();
      await page.exposeFunction('benchProgress', log);
      await page.goto(new URL('src/cli/bench.html', site.value.url).href);
      await page.waitForFunction(() => window.runBench !== undefined);
      await page.setInputFiles('#clip', clip);
      const answer = await page.evaluate((o) => (window.runBench ?? Promise.reject)(o), order);
      return { answer, version: browser.version() };
    } finally {
      await browser.close();
    }
  } finally {
    await site.value.close();
  }
}
