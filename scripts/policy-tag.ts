import type { Plugin } from 'vite';
import { META_POLICY } from './headers.ts';

/** Writes the Content-Security-Policy into every built page, before all that it is to hold for. Not while developing: hot reloading needs inline scripts. */
export const policyTag = (): Plugin => ({
  name: 'evenside:policy-tag',
  apply: 'build',
  transformIndexHtml: {
    order: 'post',
    handler: () => [
      { tag: 'meta', attrs: { 'http-equiv': 'Content-Security-Policy', content: META_POLICY }, injectTo: 'head-prepend' },
    ],
  },
});
