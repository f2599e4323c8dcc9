import { createHash } from 'node:crypto';
import { readFile } from 'node:fs/promises';
import { join } from 'node:path';
import type { PluginOption } from 'vite';
import { VitePWA } from 'vite-plugin-pwa';

/** Begins the names of the caches: all that begin so are the program's own, and go when everything is deleted. */
const CACHE_NAMES = 'evenside';

/** The longest file that is kept, bytes: the pose model's WebAssembly has 11.2 million. */
const LONGEST = 16_000_000;

/** What is kept for the time without a network. The pose models are not among it: the page fetches and keeps the one that is chosen. */
const KEPT = [
  'index.html',
  'manifest.webmanifest',
  'assets/*.{js,css,svg}',
  'icons/*.png',
  'wasm/*.{js,wasm}',
  'recordings/example-foot-taps.mp4',
];

/** As the browser compares it with what came: a file that was changed on its way is not kept. */
async function integrityOf(path: string): Promise<string> {
  return `sha256-${createHash('sha256')
    .update(await readFile(path))
    .digest('base64')}`;
}

/**
 * Makes the service worker of the built site, which keeps all of it for the time without a network. A new version waits until the page asks for it.
 * @param out where the site is built, at the moment it is asked for
 */
function precaching(out: () => string): PluginOption {
  return VitePWA({
    strategies: 'generateSW',
    registerType: 'prompt',
    mode: 'production',
    manifest: false,
    injectRegister: false,
    includeManifestIcons: false,
    workbox: {
      cacheId: CACHE_NAMES,
      globPatterns: KEPT,
      maximumFileSizeToCacheInBytes: LONGEST,
      cleanupOutdatedCaches: true,
      // From the first visit on: what is loaded later comes from the same version.
      clientsClaim: true,
      skipWaiting: false,
      navigateFallback: null,
      inlineWorkboxRuntime: true,
      sourcemap: false,
      manifestTransforms: [
        async (entries) => ({
          manifest: await Promise.all(
            entries.map(async (entry) => ({ ...entry, integrity: await integrityOf(join(out(), entry.url)) })),
          ),
          warnings: [],
        }),
      ],
    },
  });
}

/** The service worker of the built site, see `precaching`. */
export function siteWorker(): PluginOption {
  let out = '';
  return [
    {
      name: 'evenside:site-worker-out',
      apply: 'build',
      configResolved: ({ build }) => {
        out = build.outDir;
      },
    },
    precaching(() => out),
  ];
}
