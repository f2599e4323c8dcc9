import type { Plugin } from 'vite';

/** The colours of `src/screens/styles/tokens.css`: behind the icon, and of the page before it is drawn. */
const DEEP = '#0c5160';
const PAGE = '#f4f1ea';

const ICONS = [
  { src: 'icons/icon-192.png', sizes: '192x192', type: 'image/png', purpose: 'any' },
  { src: 'icons/icon-512.png', sizes: '512x512', type: 'image/png', purpose: 'any' },
  { src: 'icons/maskable-512.png', sizes: '512x512', type: 'image/png', purpose: 'maskable' },
];

/** What makes the site an app that can be installed. All addresses are relative, so that it also holds under a sub-path. */
const SITE_MANIFEST = {
  name: 'Evenside',
  short_name: 'Evenside',
  description: 'Counts and measures prescribed leg movements from a camera or a video file, on this machine.',
  lang: 'en',
  dir: 'auto',
  start_url: './',
  scope: './',
  display: 'standalone',
  background_color: PAGE,
  theme_color: DEEP,
  categories: ['health'],
  icons: ICONS,
};

/** Adds the manifest to the built site, and to its first page what points to it. */
export const siteManifest = (): Plugin => ({
  name: 'evenside:site-manifest',
  apply: 'build',
  generateBundle() {
    this.emitFile({ type: 'asset', fileName: 'manifest.webmanifest', source: JSON.stringify(SITE_MANIFEST, null, 2) });
  },
  transformIndexHtml: {
    order: 'post',
    handler: (_, { path }) =>
      path === '/index.html'
        ? [
            { tag: 'link', attrs: { rel: 'manifest', href: './manifest.webmanifest' }, injectTo: 'head' },
            { tag: 'link', attrs: { rel: 'apple-touch-icon', href: './icons/apple-180.png' }, injectTo: 'head' },
            { tag: 'meta', attrs: { name: 'theme-color', content: DEEP }, injectTo: 'head' },
          ]
        : [],
  },
});
