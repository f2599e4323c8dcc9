import type { Browser } from 'playwright-core';

/** What something took. */
export interface Took {
  readonly ms: number;
  /** Of all the browser's processes together, also while others used the same cores: says more than `ms` on a machine that is busy. */
  readonly cpuMs: number;
}

/** A stop watch that also counts the processor's time of a browser. */
export async function stopWatch(browser: Browser): Promise<{ readonly lap: () => Promise<Took> }> {
  const session = await browser.newBrowserCDPSession();
  const cpu = async () => {
    const { processInfo } = await session.send('SystemInfo.getProcessInfo');
    return 1000 * processInfo.reduce((sum, { cpuTime }) => sum + cpuTime, 0);
  };
  let [began, used] = [performance.now(), await cpu()];
  return {
    /** Since the last one. */
    async lap() {
      const [now, usedNow] = [performance.now(), await cpu()];
      const took = { ms: now - began, cpuMs: usedNow - used };
      [began, used] = [performance.now(), usedNow];
      return took;
    },
  };
}
