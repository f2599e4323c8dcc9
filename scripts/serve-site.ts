import { join } from 'node:path';
import { type PreviewServer, preview } from 'vite';
import { fail, ok, type Result } from '../src/result.ts';
import { cacheControlOf } from './headers.ts';
import { headersFor, type KnownServer, pageFor, workerFor } from './known-server.ts';
import { typeOf } from './site-assets.ts';

/** The only address the site is served on: this machine's own. */
const LOOPBACK = '127.0.0.1';

export type ServeError =
  | { readonly kind: 'port-taken'; readonly port: number }
  | { readonly kind: 'port-refused'; readonly port: number; readonly reason: string };

/** A running server. `url` ends with a slash. */
export interface Site {
  readonly url: string;
  readonly port: number;
  readonly close: () => Promise<void>;
}

const codeOf = (cause: unknown): string => {
  if (cause instanceof Error && 'code' in cause && typeof cause.code === 'string') return cause.code;
  return cause instanceof Error && /already in use/.test(cause.message) ? 'EADDRINUSE' : '';
};

function start(root: string, port: number, known: KnownServer | null): Promise<PreviewServer> {
  return preview({
    configFile: false,
    root,
    appType: 'mpa',
    logLevel: 'silent',
    preview: { host: LOOPBACK, port, strictPort: true, cors: false, open: false },
    plugins: [
      {
        name: 'evenside:headers',
        configurePreviewServer(server) {
          server.middlewares.use((request, response, next) => {
            for (const [name, value] of Object.entries(headersFor(known))) response.setHeader(name, value);
            const { pathname } = new URL(request.url ?? '/', 'http://localhost');
            const kept = cacheControlOf(pathname);
            if (kept) response.setHeader('Cache-Control', kept);
            if (known !== null) {
              const dist = join(root, 'dist');
              const page = pageFor(dist, pathname, known);
              if (page !== null) return void response.setHeader('Content-Type', 'text/html').end(page);
              const worker = workerFor(dist, pathname, known);
              if (worker !== null) return void response.setHeader('Content-Type', 'text/javascript').end(worker);
            }
            const type = typeOf(pathname);
            if (type) response.setHeader('Content-Type', type);
            next();
          });
        },
      },
    ],
  });
}

/**
 * Serves the built site (`dist` in `root`) on loopback.
 * @param port 0 for any free one
 * @param known the FHIR server that the site knows; null: none, and nothing off the page's own origin can be asked
 */
export async function serveSite(root: string, port: number, known: KnownServer | null = null): Promise<Result<Site, ServeError>> {
  let server: PreviewServer;
  try {
    server = await start(root, port, known);
  } catch (cause) {
    const code = codeOf(cause);
    if (code === 'EADDRINUSE') return fail({ kind: 'port-taken', port });
    if (code) return fail({ kind: 'port-refused', port, reason: code });
    throw cause;
  }
  const address = server.httpServer.address();
  if (!address || typeof address === 'string') throw new Error(`serveSite requires a TCP address, got ${address}`);
  return ok({ url: `http://${LOOPBACK}:${address.port}/`, port: address.port, close: () => server.close() });
}
