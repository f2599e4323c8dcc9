import type { BrowserContext } from 'playwright-core';

/** Every address that the pages and workers of a browser context asked for, its service workers among them. */
export interface WatchedRequests {
  readonly all: readonly string[];
  /** Those of service workers alone. */
  readonly byServiceWorker: readonly string[];
  /** Those that left the origin of the site; empty when nothing leaves the machine. */
  readonly offOrigin: () => readonly string[];
}

/** Addresses of data that the page holds itself. */
const OWN_DATA = ['blob:', 'data:'];

/**
 * Watches from now on. A request that the content security policy stops never becomes one, so its report in the console counts too.
 * @param origin such as http://127.0.0.1:4310
 */
export function watchRequests(context: BrowserContext, origin: string): WatchedRequests {
  const all: string[] = [];
  const byServiceWorker: string[] = [];
  const stopped: string[] = [];
  const leaves = (url: string) => !OWN_DATA.some((scheme) => url.startsWith(scheme)) && new URL(url).origin !== origin;
  context.on('request', (request) => {
    all.push(request.url());
    if (request.serviceWorker()) byServiceWorker.push(request.url());
  });
  context.on('page', (page) => page.on('websocket', (socket) => all.push(socket.url())));
  context.on('console', (message) => {
    const text = message.text();
    if (/violates the following Content Security Policy/.test(text)) stopped.push(text);
  });
  return { all, byServiceWorker, offOrigin: () => [...all.filter(leaves), ...stopped] };
}
