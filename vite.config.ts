import react from '@vitejs/plugin-react';
import { defineConfig } from 'vite';
import { siteHeaders } from './scripts/headers-file.ts';
import { policyTag } from './scripts/policy-tag.ts';
import { siteAssets } from './scripts/site-assets.ts';
import { siteManifest } from './scripts/site-manifest.ts';
import { siteWorker } from './scripts/site-worker.ts';

/** The shapes of what is stored, which the first screen reads and most of the later ones do. */
const STORED =
  /\/src\/(record\/(diary-shape|stored-set-shape|read-sets|same-value|shape|prescription-shape|person|rep-edit)|symptoms\/(place|felt|red-flags|self-check|angle-mark|calendar-day|entry)|exercises\/(exercise|exercise-definition)|units|result)\.ts$/;

export default defineConfig({
  // The built site works from any folder of any static server.
  base: './',
  appType: 'mpa',
  plugins: [react(), siteAssets(), siteManifest(), siteHeaders(), policyTag(), siteWorker()],
  worker: { format: 'es' },
  build: {
    sourcemap: true,
    // Inlined files would be data: addresses, which the site's own policy refuses.
    assetsInlineLimit: 0,
    modulePreload: { polyfill: false },
    chunkSizeWarningLimit: 1000,
    rolldownOptions: {
      input: { app: 'index.html', measure: 'src/cli/measure.html', bench: 'src/cli/bench.html' },
      // What every first load brings along anyway is packed better in one piece than in a piece for each part of the program that shares it.
      output: { codeSplitting: { groups: [{ name: 'stored', test: STORED }] } },
    },
  },
  server: { host: '127.0.0.1' },
});
