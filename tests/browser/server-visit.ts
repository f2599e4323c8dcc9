import { mkdirSync } from 'node:fs';
import { join } from 'node:path';
import type { Browser, Page } from 'playwright-core';
import { pageFaults } from './page-faults.ts';

const SIZES = { laptop: { width: 1280, height: 800 }, phone: { width: 390, height: 844 } } as const;

export interface ServerVisit {
  readonly page: Page;
  /** Uncaught errors, and what the policy stopped. */
  readonly faults: readonly string[];
  /** Every origin that was asked for anything. */
  readonly origins: ReadonlySet<string>;
}

/** A new person's page, which may ask the origins that its policy names. */
export async function opened(browser: Browser, address: string): Promise<ServerVisit> {
  const context = await browser.newContext({ viewport: SIZES.laptop });
  const page = await context.newPage();
  const faults: string[] = [];
  const origins = new Set<string>();
  page.on('pageerror', ({ message }) => faults.push(message));
  page.on('console', (message) => /Content Security Policy/.test(message.text()) && faults.push(message.text()));
  page.on('request', (request) => origins.add(new URL(request.url()).origin));
  await page.goto(address);
  return { page, faults, origins };
}

/** A folder for pictures; none unless it is named. */
const shots = process.env.EVENSIDE_SHOTS;

/** Looks at a screen at both sizes, dark and light. @returns one line for each fault */
export async function looked(page: Page, name: string): Promise<readonly string[]> {
  const faults: string[] = [];
  for (const [size, viewport] of Object.entries(SIZES)) {
    await page.setViewportSize(viewport);
    for (const colorScheme of ['dark', 'light'] as const) {
      await page.emulateMedia({ colorScheme });
      faults.push(...(await pageFaults(page)).map((fault) => `${name}, ${size}, ${colorScheme}: ${fault}`));
      if (!shots) continue;
      mkdirSync(shots, { recursive: true });
      await page.screenshot({ path: join(shots, `${name}-${size}-${colorScheme}.png`), fullPage: true });
    }
  }
  await page.setViewportSize(SIZES.laptop);
  return faults;
}
