import { AsyncLocalStorage } from 'node:async_hooks';
import { join } from 'node:path';
import type { Browser, BrowserContext, Page } from 'playwright-core';
import { afterAll, aroundEach, beforeAll, expect } from 'vitest';
import { findChromium, launchChromium } from '../../scripts/chromium.ts';
import { type Site, serveSite } from '../../scripts/serve-site.ts';
import { POSE_MODELS } from '../../src/pose/model.ts';
import { delegateKey } from '../../src/run/faster-delegate.ts';
import { type CameraFile, type ClipPart, cameraArgs, cameraFileOf } from './fake-camera.ts';
import { type WatchedRequests, watchRequests } from './watched-requests.ts';

const ROOT = join(import.meta.dirname, '..', '..');

/** One person's browser: its own storage, closed after the test. */
export interface Visit {
  readonly page: Page;
  readonly context: BrowserContext;
  readonly requests: WatchedRequests;
  /** Uncaught errors of the page. */
  readonly pageErrors: readonly string[];
  /** Lines the page wrote with console.error; the pose model writes its notes there too. */
  readonly consoleErrors: readonly string[];
}

export interface SiteOptions {
  /** Path of a clip, from the root of the project, that the camera shows. Without it the browser has no camera. */
  readonly camera?: string;
  /** The part of it that is shown over and over; left out: all of it. */
  readonly cameraPart?: ClipPart;
  readonly args?: readonly string[];
  /** True: the site's service worker is registered and keeps it, as for a real person. Otherwise each visit would fetch all of it: 23 MB. */
  readonly keepsSite?: true;
  /** Serves the site otherwise than `npm start` does. */
  readonly serve?: () => Promise<Site>;
}

export interface VisitOptions {
  /** The app has not timed CPU against GPU here before. Otherwise it remembers the CPU, as after its first set: timing takes seconds each time. */
  readonly newMachine?: boolean;
  /** The page's date and time of day stand at this moment, in universal time; its timers go on. */
  readonly at?: Date;
}

/** The built site and a browser for the tests of one file. */
export interface SiteUnderTest {
  /** Ends with a slash. */
  readonly url: () => string;
  /** Opens an address of the site, such as `#/live`, for a new person. */
  readonly open: (address?: string, options?: VisitOptions) => Promise<Visit>;
}

const need = <T>(result: { readonly ok: true; readonly value: T } | { readonly ok: false; readonly error: unknown }): T => {
  if (result.ok) return result.value;
  throw new Error(`the browser tests can't start: ${JSON.stringify(result.error)}`);
};

async function launch(executable: string, { camera, cameraPart, args = [] }: SiteOptions) {
  if (camera === undefined) return { browser: await launchChromium(executable, args), file: null };
  const converter = await launchChromium(executable);
  const file = await cameraFileOf(converter, join(ROOT, camera), cameraPart).finally(() => converter.close());
  return { browser: await launchChromium(executable, [...cameraArgs(file), ...args]), file };
}

async function visit(
  browser: Browser,
  site: Site,
  address: string,
  { newMachine = false, at, keepsSite }: VisitOptions & Pick<SiteOptions, 'keepsSite'>,
): Promise<Visit> {
  const { origin } = new URL(site.url);
  const localStorage = newMachine ? [] : POSE_MODELS.map((model) => ({ name: delegateKey(model), value: 'CPU' }));
  const context = await browser.newContext({
    storageState: { cookies: [], origins: [{ origin, localStorage }] },
    serviceWorkers: keepsSite ? 'allow' : 'block',
    ...(at ? { timezoneId: 'UTC' } : {}),
  });
  const requests = watchRequests(context, origin);
  const pageErrors: string[] = [];
  const consoleErrors: string[] = [];
  context.on('weberror', (error) => pageErrors.push(error.error().message));
  context.on('console', (message) => message.type() === 'error' && consoleErrors.push(message.text()));
  if (at) await context.clock.setFixedTime(at);
  const page = await context.newPage();
  await page.goto(new URL(address, site.url).href);
  return { page, context, requests, pageErrors, consoleErrors };
}

/**
 * Serves the built site on a free port and starts Chromium for the tests of the calling file; call it at the top of the file.
 * After each test its visits are closed, and it fails when any of their requests left the site's origin. Tests may run at once.
 */
export function siteForTests(options: SiteOptions = {}): SiteUnderTest {
  const { keepsSite, serve } = options;
  let running: { readonly site: Site; readonly browser: Browser; readonly file: CameraFile | null } | null = null;
  // Of the test that asks: several may run at once.
  const visitsOfTest = new AsyncLocalStorage<Visit[]>();
  const now = () => {
    if (!running) throw new Error('siteForTests requires its hooks to have run: open pages inside tests');
    return running;
  };

  beforeAll(async () => {
    const executable = need(findChromium(() => {}));
    const site = await (serve?.() ?? serveSite(ROOT, 0).then(need));
    running = { site, ...(await launch(executable, options)) };
  });
  aroundEach(async (runTest) => {
    const visits: Visit[] = [];
    try {
      await visitsOfTest.run(visits, runTest);
    } finally {
      await Promise.all(visits.map(({ context }) => context.close()));
      expect(
        visits.flatMap(({ requests }) => requests.offOrigin()),
        'requests that left the origin',
      ).toEqual([]);
    }
  });
  afterAll(async () => {
    await running?.browser.close();
    await running?.file?.remove();
    await running?.site.close();
  });

  return {
    url: () => now().site.url,
    async open(address = '', visitOptions = {}) {
      const { browser, site } = now();
      const visits = visitsOfTest.getStore();
      if (!visits) throw new Error('siteForTests requires pages to be opened inside tests');
      const opened = await visit(browser, site, address, { ...visitOptions, ...(keepsSite ? { keepsSite } : {}) });
      visits.push(opened);
      return opened;
    },
  };
}
