import type { Plugin } from 'vite';
import { CHANGING, cacheControlOf, SITE_HEADERS, UNCHANGING_FOLDER } from './headers.ts';

const block = (path: string, headers: Readonly<Record<string, string>>): string =>
  [path, ...Object.entries(headers).map(([name, value]) => `  ${name}: ${value}`)].join('\n');

/** The headers in the format that many static hosts read from a file `_headers`: a path, and below it what its answers carry. */
export const headersFile = (): string =>
  `${[
    block('/*', SITE_HEADERS),
    ...[...CHANGING, `${UNCHANGING_FOLDER}*`].map((path) => block(path, { 'Cache-Control': cacheControlOf(path) ?? '' })),
  ].join('\n\n')}\n`;

/** Puts the headers beside the built site, for whoever serves it from elsewhere. */
export const siteHeaders = (): Plugin => ({
  name: 'evenside:headers-file',
  apply: 'build',
  generateBundle() {
    this.emitFile({ type: 'asset', fileName: '_headers', source: headersFile() });
  },
});
